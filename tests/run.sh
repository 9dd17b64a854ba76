#!/usr/bin/env bash
# Installs what the tests need, builds everything with warnings as errors and sanitizers, and runs every test.
set -euo pipefail
cd "$(dirname "$0")/.."

./.install-packages .packages-build .packages-test
cmake -S . -B build-tests -G Ninja -DCMAKE_BUILD_TYPE=Debug -DRISERUN_SANITIZE=ON -DRISERUN_TESTS=ON >/dev/null
cmake --build build-tests
ctest --test-dir build-tests --output-on-failure -j "$(nproc)"
