#!/bin/sh
# Installs what is missing, builds Release with warnings as errors, measures, and prints one table of figures.
set -eu
cd "$(dirname "$0")/../.."

sh ./.install-packages .packages-build .packages-bench
cmake -S . -B build-bench -G Ninja -DCMAKE_BUILD_TYPE=Release -DRISERUN_TESTS=OFF -DRISERUN_BENCH=ON >/dev/null
cmake --build build-bench
/usr/bin/python3 tests/bench/figures.py build-bench "${1:-500}"
build-bench/bench/finder_benchmark --benchmark_min_time=0.2
