// Checks of [discharges], [floods] and [reservoir].
#include <fmt/format.h>

#include <algorithm>

#include "quell/io/draft_view.h"
#include "quell/io/nearest.h"
#include "quell/io/site_checks.h"

namespace quell::io {
namespace {

class DischargeChecker : private DraftView {
 public:
  DischargeChecker(const Draft& draft, ProblemList& problems) : DraftView(draft), site_(draft.site), problems_(problems) {}

  void run() {
    discharges();
    floods();
    inflows();
    named_inflow("discharges.design_inflow", site_.discharges.design_inflow);
    named_inflow("discharges.check_inflow", site_.discharges.check_inflow);
    record();
  }

 private:
  const site::Site& site_;
  ProblemList& problems_;

  void problem(Place place, std::string message) { problems_.problem(place, std::move(message)); }

  void discharges() {
    const site::Discharges& d = site_.discharges;
    if (have({"discharges.design_flood", "discharges.check_flood"}) && d.check_flood < d.design_flood)
      problem(at("discharges.check_flood"),
              fmt::format("check_flood {} is smaller than design_flood {}; it is the largest discharge of the range",
                          discharge(d.check_flood), discharge(d.design_flood)));
    if (have({"discharges.design_flood", "discharges.smallest"}) && !(d.smallest < d.design_flood))
      problem(at("discharges.smallest"), fmt::format("smallest {} must be smaller than design_flood {}", discharge(d.smallest),
                                                     discharge(d.design_flood)));
    else if (!have({"discharges.design_flood"}) && have({"discharges.smallest", "discharges.check_flood"}) &&
             !(d.smallest < d.check_flood))
      problem(at("discharges.smallest"),
              fmt::format("smallest {} must be smaller than check_flood {}", discharge(d.smallest), discharge(d.check_flood)));
  }

  void floods() {
    if (!have({"discharges.smallest", "discharges.check_flood"})) return;
    for (std::size_t i = 0; i < site_.discharges.floods.size(); ++i) {
      const std::string key = fmt::format("discharges.floods[{}].discharge", i + 1);
      const double value = site_.discharges.floods[i].discharge;
      if (have({key}) && (value < site_.discharges.smallest || value > site_.discharges.check_flood))
        problem(at(key), fmt::format("the flood '{}' of {} lies outside the range from smallest {} to check_flood {}; widen "
                                     "the range or leave it out",
                                     site_.discharges.floods[i].name.substr(0, 60), discharge(value),
                                     discharge(site_.discharges.smallest), discharge(site_.discharges.check_flood)));
    }
  }

  void inflows() {
    const auto& all = site_.floods.inflows;
    if (!have({"floods.inflows"})) return;
    if (!have({"reservoir"}))
      problem(at("floods.inflows"), "inflows are routed through the reservoir; add [reservoir] with its storage");
    for (std::size_t i = 0; i < all.size(); ++i) {
      const std::string item = fmt::format("floods.inflows[{}]", i + 1);
      for (std::size_t k = 0; k < i; ++k)
        if (have({item + ".name"}) && all[k].name == all[i].name) {
          problem(at(item + ".name"),
                  fmt::format("the name '{}' stands twice; a flood is called by it", all[i].name.substr(0, 60)));
          break;
        }
      if (have({item + ".shape"}) && all[i].shape != site::InflowShape::measured) peak(item, all[i]);
    }
  }

  void peak(const std::string& item, const site::Inflow& inflow) {
    if (have({item + ".peak"})) {
      if (have({item + ".base_flow"}) && !(inflow.base_flow < inflow.peak))
        problem(at_typed({item + ".base_flow", item + ".peak"}),
                fmt::format("base_flow {} must be smaller than peak {}", discharge(inflow.base_flow), discharge(inflow.peak)));
    } else if (!have({item + ".return_period"})) {
      problem(at(item), "an inflow of this shape needs peak, or return_period and [floods.record] to take it from");
    } else if (!have({"floods.record"})) {
      problem(at(item + ".return_period"),
              "the peak follows from the return period only with [floods.record]; add it, or give peak");
    } else if (inflow.return_period <= 1.0) {
      problem(at(item + ".return_period"), "the peak follows from a return period longer than one year");
    }
  }

  void named_inflow(std::string_view key, const std::string& name) {
    if (!have({key})) return;
    std::vector<std::string_view> names;
    names.reserve(site_.floods.inflows.size());
    for (const site::Inflow& inflow : site_.floods.inflows) names.emplace_back(inflow.name);
    if (std::find(names.begin(), names.end(), name) != names.end()) return;
    const std::string_view meant = nearest(name, names);
    const std::string_view word = key.substr(key.find('.') + 1);
    if (names.empty()) {
      problem(at(key), fmt::format("{} names an inflow of [[floods.inflows]], and there is none", word));
    } else {
      problem(at(key), fmt::format("{}: there is no inflow '{}' in [[floods.inflows]]; {}", word, name.substr(0, 60),
                                   meant.empty() ? fmt::format("known are '{}'", fmt::join(names, "', '"))
                                                 : fmt::format("did you mean '{}'?", meant)));
    }
  }

  void record() {
    if (typed("floods.record.regional_skew_error") && !have({"floods.record.regional_skew"}))
      problem(at("floods.record.regional_skew_error"), "regional_skew_error has no meaning without regional_skew");
  }
};

class ReservoirChecker : private DraftView {
 public:
  ReservoirChecker(const Draft& draft, ProblemList& problems) : DraftView(draft), site_(draft.site), problems_(problems) {}

  void run() {
    levels();
    if (have({"reservoir.checked"})) table();
  }

 private:
  const site::Site& site_;
  ProblemList& problems_;

  void problem(Place place, std::string message) { problems_.problem(place, std::move(message)); }

  void levels() {
    const site::Reservoir& r = site_.reservoir;
    if (have({"reservoir.dam_crest_level", "crest.level"}) && !(r.dam_crest_level > site_.crest.crest_level))
      problem(at("reservoir.dam_crest_level"),
              fmt::format("the top of the dam at {} must lie above the crest of the spillway at {}", length(r.dam_crest_level),
                          length(site_.crest.crest_level)));
    if (have({"reservoir.dam_crest_level", "reservoir.initial_level"}) && r.initial_level > r.dam_crest_level)
      problem(at("reservoir.initial_level"), fmt::format("initial_level {} lies above the top of the dam at {}",
                                                         length(r.initial_level), length(r.dam_crest_level)));
    if (typed("reservoir.freeboard") && !have({"reservoir.dam_crest_level"}))
      problem(at("reservoir.freeboard"), "freeboard is measured below the top of the dam; add dam_crest_level");
  }

  /// The level before the flood, and what it is.
  std::pair<double, std::string_view> start() const {
    if (have({"reservoir.initial_level"})) return {site_.reservoir.initial_level, "initial_level"};
    if (have({"gates.held_level"})) return {site_.gates.held_level, "held_level, where the flood starts,"};
    return {site_.crest.crest_level, "the crest, where the flood starts,"};
  }

  void table() {
    const site::Reservoir& r = site_.reservoir;
    const Place place = at("reservoir.file");
    const bool to_dam = have({"reservoir.dam_crest_level"});
    if (!have({"crest.level"})) return;
    const double needed = to_dam ? r.dam_crest_level : site_.crest.crest_level;
    if (r.level.back() < needed)
      problem(place, fmt::format("the storage table ends at {}, but {} lies at {}; add a row up there", length(r.level.back()),
                                 to_dam ? "the top of the dam" : "the crest", length(needed)));
    const auto [level, words] = start();
    if (r.level.front() > level)
      problem(place, fmt::format("the storage table starts at {}, but {} is {}; add a row down there", length(r.level.front()),
                                 words, length(level)));
    const bool above_dam = to_dam && level > needed;  // told already
    if (level > r.level.back() && r.level.back() >= needed && !above_dam)
      problem(
          at_typed({"reservoir.initial_level", "gates.held_level", "reservoir.file"}),
          fmt::format("{} {} lies above the storage table, which ends at {}", words, length(level), length(r.level.back())));
  }
};

}  // namespace

void check_discharges(const Draft& draft, ProblemList& problems) {
  DischargeChecker(draft, problems).run();
}

void check_reservoir(const Draft& draft, ProblemList& problems) {
  ReservoirChecker(draft, problems).run();
}

}  // namespace quell::io
