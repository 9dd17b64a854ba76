#!/usr/bin/env bash
# Installs what the tests need, builds everything with warnings as errors and sanitizers, and runs every test.
set -euo pipefail
cd "$(dirname "$0")/.."

./.install-packages .packages-build .packages-test
# Several files are built as one, which takes half the time; examples/first-run.sh builds each by itself.
settings=(-G Ninja -DRISERUN_TESTS=ON -DCMAKE_UNITY_BUILD=ON)
cmake -S . -B build-tests "${settings[@]}" -DCMAKE_BUILD_TYPE=Debug -DRISERUN_SANITIZE=ON >/dev/null
cmake --build build-tests

# What works on several threads, under the thread sanitizer, which does not go with the others.
cmake -S . -B build-tests-threads "${settings[@]}" -DCMAKE_BUILD_TYPE=None -DRISERUN_SANITIZE_THREADS=ON >/dev/null
cmake --build build-tests-threads --target window_model_threads
build-tests-threads/tests/window_model_threads --gtest_brief=1

ctest --test-dir build-tests --output-on-failure -j "$(nproc)"
