#!/bin/sh
# Installs what the tests need, builds everything with warnings as errors and sanitizers, and runs every test.
set -eu
cd "$(dirname "$0")/.."

sh ./.install-packages .packages-build .packages-test
# configure FOLDER SETTINGS ...: several files are built as one, which takes half the time.
configure() {
  folder=$1
  shift
  cmake -S . -B "$folder" -G Ninja -DRISERUN_TESTS=ON -DCMAKE_UNITY_BUILD=ON "$@" >/dev/null
}
configure build-tests -DCMAKE_BUILD_TYPE=Debug -DRISERUN_SANITIZE=ON
cmake --build build-tests

# What works on several threads, under the thread sanitizer, which does not go with the others.
configure build-tests-threads -DCMAKE_BUILD_TYPE=None -DRISERUN_SANITIZE_THREADS=ON
cmake --build build-tests-threads --target window_model_threads
build-tests-threads/tests/window_model_threads --gtest_brief=1

# The tests of the window wait for most of their time: one more than there are processors.
ctest --test-dir build-tests --output-on-failure -j "$(($(nproc) + 1))"
