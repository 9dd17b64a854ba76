#!/bin/sh
# Installs what Riserun needs, builds it, and prints the plan of the main example.
set -eu
cd "$(dirname "$0")/.."

sh ./.install-packages .packages-build
echo "Building in build/ ..."
# Several files are built as one, which takes half the time.
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DRISERUN_TESTS=OFF -DCMAKE_UNITY_BUILD=ON >/dev/null
cmake --build build
echo "Running: build/riserun plan examples/bevel-bench.yaml"
echo
exec build/riserun plan examples/bevel-bench.yaml
