#include "cli/command.h"

#include <iostream>

int main(int argc, char** argv) { return riserun::cli::run(argc, argv, std::cout, std::cerr); }
