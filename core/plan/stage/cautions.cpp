// The cautions that belong to the whole job, whatever is in it.
#include "plan/stage/cautions.h"

#include "catalog/words/words.h"
#include "chain/finder.h"
#include "plan/judge/drain.h"
#include "plan/judge/limits.h"
#include "plan/stage/walls.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

namespace riserun::plan {

namespace {

bool wets_aluminium(const Settled& settled) { return settled.metal.weld_metal == reservoir::WeldMetal::aluminium; }

void caution_water_and_metal(const Inputs& inputs, Remarks& remarks) {
  // While vent and purge are open, that is a finding.
  const Job& job = inputs.job;
  if ((job.cutting.aluminium || job.cutting.magnesium) && job.vent.stays_open && job.vent.purged)
    remarks.caution(Topic::whole_job, fact("fines_settle", job.cutting.aluminium ? "Aluminium" : "Magnesium"),
                    "trade safety notes on air-lift cutting tables");
  if (wets_aluminium(inputs.settled))
    remarks.caution(Topic::whole_job, fact("copper_eats_aluminium"), "galvanic series");
  remarks.standing_caution(Topic::care, fact("water_breeds_bugs"), "HSE guidance on metalworking fluids");
}

/// What is drained is the table: what stands in the reservoir, the riser and the low places of the runs stays.
void caution_frost(const Inputs& inputs, Remarks& remarks) {
  const Job& job = inputs.job;
  const Temperature coldest = std::min(inputs.settled.temperature, job.coldest.value_or(inputs.settled.temperature));
  if (coldest < kFreezing && !job.against_frost.words.empty())
    remarks.caution(Topic::whole_job, fact("drained_is_not_empty", job.against_frost.words), "common practice");
}

void caution_heat(const Inputs& inputs, Remarks& remarks) {
  const Job& job = inputs.job;
  const Temperature hottest = std::max(inputs.settled.temperature, job.hottest.value_or(inputs.settled.temperature));
  if (hottest >= kScalding && !job.against_heat.words.empty())
    remarks.caution(Topic::whole_job, fact("hot_water", hottest, job.against_heat.words), "Moritz and Henriques 1947");
}

/// A name is no statement, but who calls his tank so had better read this first.
void caution_used_container(const Inputs& inputs, Remarks& remarks) {
  constexpr std::string_view kNames[] = {"propane",  "butane",    "lpg",      "acetylene", "gas cylinder", "gas bottle",
                                         "gasoline", "petrol",    "fuel",     "diesel",    "kerosene",     "oil drum",
                                         "solvent",  "used drum", "old drum", "old tank",  "used tank"};
  const std::string name = catalog::lower_case(inputs.job.name);
  if (std::any_of(std::begin(kNames), std::end(kNames),
                  [&](std::string_view word) { return name.find(word) != std::string::npos; }))
    remarks.caution(Topic::whole_job, fact("name_speaks_of_what_burns", inputs.job.name), "29 CFR 1910.252(a)(3)");
}

/// The zinc of galvanized sheet, wherever an arc comes to it.
void caution_zinc(const Inputs& inputs, Remarks& remarks) {
  if (inputs.settled.metal.name.find("galvanized") != std::string::npos)
    remarks.caution(Topic::whole_job, fact("zinc_makes_fume", inputs.settled.metal.name),
                    "29 CFR 1910.252(c)(6), from memory");
}

/// A valve on the table that nothing leads on from: what runs out is no longer in the reservoir.
void caution_table_drains(const Plan& plan, Remarks& remarks) {
  for (const Way& way : plan.ways) {
    if (way.use != WayUse::water || !way.device || !way_is_shut_by_hand(*plan.catalog, way)) continue;
    const bool of_table =
        std::any_of(plan.connections.begin(), plan.connections.end(), [&](const ConnectionPlan& connection) {
          return connection.name == way.connection && port_named(plan.job.table.ports, connection.from) != nullptr;
        });
    if (of_table)
      remarks.caution(Topic::whole_job, fact("table_drains_onto_the_floor", way.branched ? way.end : way.connection),
                      "common practice");
  }
}

/// A way back beside the riser's line lets the air out, too.
void caution_ways_back(const Plan& plan, Remarks& remarks) {
  for (std::size_t row = 0; row < plan.connections.size(); ++row)
    if (row != plan.water_connection && leads_back(*plan.catalog, plan.job, plan.ways, plan.connections[row]))
      remarks.caution(Topic::whole_job, fact("way_back_is_shut", plan.connections[row].name), "worked out");
}

void caution_no_drain(const Plan& plan, Remarks& remarks) {
  if (const ConnectionPlan* plugged = plugged_drain(plan))
    remarks.caution(Topic::care, fact("reservoir_drains_by_a_plug", plugged->from), "common practice");
  if (!has_port_to_drain_by(plan))
    remarks.caution(Topic::care, fact("reservoir_has_no_drain", plan.levels.heel), "common practice");
}

/// The line to the table runs both ways: what comes down from the table comes to a strainer from behind, and over a rim
/// the water hangs on what lies below it, in a hose that suction may flatten.
void caution_line(const Plan& plan, Remarks& remarks) {
  if (!plan.water_connection) return;
  const ConnectionPlan& line = plan.connections[*plan.water_connection];
  if (line.chain() == nullptr) return;
  for (const chain::RunPart& link : line.chain()->parts) {
    const catalog::Part& part = plan.catalog->part(link.part);
    if (plan.catalog->family(part.family).shape == catalog::BodyShape::strainer)
      remarks.caution(Topic::whole_job, fact("dirt_lies_on_the_strainer", part.name, line.name), "common practice");
    if (plan.transfer.siphon && part.flexible &&
        chain::in_vacuum(*plan.catalog, link.part) == catalog::InVacuum::collapses)
      remarks.caution(Topic::whole_job, fact("siphon_flattens_hose", line.name, part.name), "common practice");
  }
}

/// A chamber that is closed is heated and cut.
void caution_shut_tank(const Inputs& inputs, Remarks& remarks) {
  if (!inputs.settled.lid_closed) return;
  quantity::Texts names;
  for (const JobPort& port : inputs.job.reservoir.ports)
    if (port.welded_in == false) names.push_back(port.name);
  if (are_shut_in(inputs)) remarks.caution(Topic::whole_job, fact("look_for_the_supports"), "common practice");
  if (!names.empty()) remarks.caution(Topic::whole_job, fact("bungs_into_a_shut_tank", std::move(names)), "AWS F4.1");
}

/// A rigid run gives nothing: where a height is assumed, the ports are set to the run.
void caution_rigid_runs(const Plan& plan, Remarks& remarks) {
  for (const ConnectionPlan& connection : plan.connections) {
    if (!connection.gap_assumed || !connection.gap || connection.hose_length) continue;
    for (const Fact& caution : connection.cautions)
      if (caution.code == "run_too_long" || caution.code == "run_too_short")
        remarks.caution(
            Topic::whole_job,
            fact(caution.code == "run_too_long" ? "leave_more_between" : "leave_less_between", connection.name,
                 connection.run_length, std::get<Length>(caution.values[0]), connection.from, connection.to),
            "worked out");
  }
}

}  // namespace

void caution_whole_job(const Inputs& inputs, const Plan& plan, Remarks& remarks) {
  caution_used_container(inputs, remarks);
  caution_zinc(inputs, remarks);
  caution_table_drains(plan, remarks);
  caution_ways_back(plan, remarks);
  caution_no_drain(plan, remarks);
  caution_line(plan, remarks);
  caution_shut_tank(inputs, remarks);
  caution_rigid_runs(plan, remarks);
  caution_frost(inputs, remarks);
  caution_heat(inputs, remarks);
  remarks.standing_caution(Topic::whole_job, fact("air_in_a_flat_tank"), "NIOSH FACE reports 13CA003 and 01MI038");
  remarks.standing_caution(Topic::whole_job, fact("no_design_to_code"), "scope of ASME BPVC Section VIII Div. 1");
  remarks.standing_caution(Topic::care, fact("local_codes"), "local codes");
  remarks.standing_caution(Topic::care, fact("weld_on_a_used_tank"), "AWS F4.1; 29 CFR 1910.252");
  caution_water_and_metal(inputs, remarks);
}

}  // namespace riserun::plan
