// Any text as a job file: it is read whole or refused with at least one problem; what is read makes a plan.
#include "catalog/load/load.h"
#include "plan/job/read_job.h"
#include "plan/plan.h"

#include <cstdint>
#include <cstdlib>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace riserun;
  static const auto catalog =
      std::make_shared<const catalog::Catalog>(catalog::load_catalog(std::string(RISERUN_SOURCE_DIR) + "/catalog"));
  const std::string text(reinterpret_cast<const char*>(data), size);
  plan::Job job;
  try {
    job = plan::read_job(*catalog, text, "fuzz.yaml");
  } catch (const InputError& error) {
    if (error.problems().empty()) std::abort();
    return 0;
  }
  const plan::Plan plan = plan::make_plan(catalog, job);
  if (plan.connections.size() != job.connections.size()) std::abort();
  if ((plan.verdict == plan::Verdict::ready) != plan.findings.empty()) std::abort();
  return 0;
}
