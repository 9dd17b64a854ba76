// write_list_pdf JOB FOLDER: the list of a job as PDF in both unit systems, and as text to hold it against.
#include "catalog/load/load.h"
#include "plan/job/read_job.h"
#include "report/paper/list_pdf.h"
#include "report/text/plan_text.h"

#include <filesystem>
#include <fstream>

int main(int count, char** words) {
  using namespace riserun;
  if (count != 3) return 2;
  const auto catalog = std::make_shared<const catalog::Catalog>(
      catalog::load_catalog(std::filesystem::path(RISERUN_SOURCE_DIR) / "catalog"));
  const std::filesystem::path folder = words[2];
  for (const UnitSystem units : {UnitSystem::inch, UnitSystem::metric}) {
    plan::Job job = plan::load_job(*catalog, words[1]);
    job.units = units;
    const plan::Plan plan = plan::make_plan(catalog, std::move(job));
    const report::Style style{units, false};
    const bool inch = units == UnitSystem::inch;
    std::ofstream(folder / (inch ? "list-inch.pdf" : "list-metric.pdf"), std::ios::binary)
        << report::list_pdf(plan, style);
    if (inch) std::ofstream(folder / "list.txt") << report::list_text(plan, style);
  }
}
