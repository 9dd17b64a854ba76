#!/usr/bin/env bash
# Installs what Riserun needs, builds it, and prints the plan of the main example.
set -euo pipefail
cd "$(dirname "$0")/.."

./.install-packages .packages-build
echo "Building in build/ ..."
cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DRISERUN_TESTS=OFF >/dev/null
cmake --build build --target riserun riserun-view | tail -n 1
echo "Running: build/riserun plan examples/bevel-bench.yaml"
echo
exec build/riserun plan examples/bevel-bench.yaml
