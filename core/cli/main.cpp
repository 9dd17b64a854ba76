#include "cli/command.h"
#include "quantity/printable.h"

#include <fcntl.h>
#include <unistd.h>

#include <exception>
#include <iostream>
#include <new>

namespace {

/// Where the shell has closed one of the three, the next file that is opened would get its number and what is printed.
/// Open for reading alone, it stays an error to write there.
void fill_standard_streams() {
  for (int stream = STDIN_FILENO; stream <= STDERR_FILENO; ++stream)
    if (::fcntl(stream, F_GETFD) < 0) ::open("/dev/null", O_RDONLY);
}

}  // namespace

int main(int argc, char** argv) {
  fill_standard_streams();
  try {
    return riserun::cli::run(argc, argv, std::cout, std::cerr);
  } catch (const std::bad_alloc&) {
    std::cerr << "error: there is not enough memory for this.\n";
  } catch (const std::exception& error) {
    std::cerr << "error: " << riserun::quantity::printable(error.what()) << "\n";
  }
  return riserun::cli::kBadInput;
}
