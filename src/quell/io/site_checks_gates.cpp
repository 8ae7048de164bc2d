// Checks of [gates].
#include <fmt/format.h>

#include <cmath>
#include <numeric>

#include "quell/io/draft_view.h"
#include "quell/io/site_checks.h"

namespace quell::io {
namespace {

constexpr double width_tolerance = 1e-3;  ///< of the width of the crest

class GateChecker : private DraftView {
 public:
  GateChecker(const Draft& draft, ProblemList& problems)
      : DraftView(draft), site_(draft.site), gates_(draft.site.gates), problems_(problems) {}

  void run() {
    if (!have({"gates"})) return;
    if (have({"crest.shape"}) && site_.crest.shape != site::CrestShape::ogee)
      return problem(at("gates"),
                     fmt::format("gates stand on an ogee crest only, not on a {} one: their published coefficients hold "
                                 "for it; delete [gates], or set shape = \"ogee\"",
                                 name_of(site_.crest.shape)));
    bays();
    levels();
    for (std::size_t i = 0; i < gates_.patterns.size(); ++i) pattern(i);
    for (std::size_t i = 0; i < gates_.rules.size(); ++i) rule(i);
  }

 private:
  const site::Site& site_;
  const site::Gates& gates_;
  ProblemList& problems_;

  void problem(Place place, std::string message) { problems_.problem(place, std::move(message)); }

  void bays() {
    const double together = gates_.count * gates_.bay_width;
    if (have({"gates.count", "gates.bay_width", "crest.net_width"}) &&
        std::abs(together - site_.crest.net_width) > width_tolerance * site_.crest.net_width)
      problem(at("gates.bay_width"),
              fmt::format("{} bays of {} are {} wide together, but the net_width of the crest is {}", gates_.count,
                          length(gates_.bay_width), length(together), length(site_.crest.net_width)));
    if (have({"gates.count"}) && typed("crest.piers") && site_.crest.piers != gates_.count - 1)
      problem(at("crest.piers"),
              fmt::format("{} bays have {} pier{} between them, not {}; set piers = {}, or leave it out", gates_.count,
                          gates_.count - 1, gates_.count == 2 ? "" : "s", site_.crest.piers, gates_.count - 1));
  }

  void levels() {
    if (have({"gates.held_level", "gates.seat_level"}) && !(gates_.held_level > gates_.seat_level))
      problem(at("gates.held_level"), fmt::format("held_level {} must lie above the seat of the gates at {}",
                                                  length(gates_.held_level), length(gates_.seat_level)));
    if (have({"gates.held_level", "reservoir.dam_crest_level"}) && !(gates_.held_level < site_.reservoir.dam_crest_level))
      problem(at("gates.held_level"), fmt::format("held_level {} must lie below the top of the dam at {}",
                                                  length(gates_.held_level), length(site_.reservoir.dam_crest_level)));
  }

  void pattern(std::size_t index) {
    const site::GatePattern& pattern = gates_.patterns[index];
    const std::string item = fmt::format("gates.patterns[{}]", index + 1);
    for (std::size_t k = 0; k < index; ++k)
      if (have({item + ".name"}) && gates_.patterns[k].name == pattern.name) {
        problem(at(item + ".name"), fmt::format("the pattern '{}' stands twice", pattern.name.substr(0, 60)));
        break;
      }
    const std::string openings = item + ".openings";
    if (have({openings, "gates.count"}) && pattern.opening.size() != static_cast<std::size_t>(gates_.count))
      problem(at(openings), fmt::format("{} openings for {} gates: give one for each, 0 for a shut one", pattern.opening.size(),
                                        gates_.count));
    for (std::size_t i = 0; i < pattern.opening.size() && have({openings, "gates.full_opening"}); ++i)
      if (pattern.opening[i] > gates_.full_opening)
        problem(member_at(openings, i), fmt::format("an opening of {} is more than full_opening {}", length(pattern.opening[i]),
                                                    length(gates_.full_opening)));
    for (std::size_t i = 0; i < pattern.level.size() && have({item + ".levels", "gates.seat_level"}); ++i)
      if (pattern.level[i] <= gates_.seat_level)
        problem(member_at(item + ".levels", i), fmt::format("at {} no water stands at the gates, whose seat lies at {}",
                                                            length(pattern.level[i]), length(gates_.seat_level)));
  }

  /// Sum of the openings under a rule, m; nothing where its pattern is not known.
  std::optional<double> opened_by(std::size_t rule) const {
    const std::size_t pattern = gates_.rules[rule].pattern;
    if (!have({fmt::format("gates.rules[{}].checked", rule + 1), fmt::format("gates.patterns[{}].openings", pattern + 1)}))
      return std::nullopt;
    const std::vector<double>& opening = gates_.patterns[pattern].opening;
    return std::accumulate(opening.begin(), opening.end(), 0.0);
  }

  /// A rule that holds above a level and ends below another swings the gates to and fro at every step of time unless the second
  /// lies lower; and going up and down the rules must lead through the same patterns.
  void rule(std::size_t index) {
    const site::GateRule& rule = gates_.rules[index];
    const std::string item = fmt::format("gates.rules[{}]", index + 1);
    const bool whole = have({item + ".open_at", item + ".close_at"});
    if (whole && !(rule.close_level < rule.open_level))
      problem(at(item + ".close_at"),
              fmt::format(
                  "close_at {} must lie below open_at {}: at a level between them the gates would open and close without end",
                  length(rule.close_level), length(rule.open_level)));
    if (have({item + ".open_at", "gates.seat_level"}) && rule.open_level <= gates_.seat_level)
      problem(at(item + ".open_at"), fmt::format("open_at {} must lie above the seat of the gates at {}",
                                                 length(rule.open_level), length(gates_.seat_level)));
    if (index > 0) follows(index, item);
  }

  void follows(std::size_t index, const std::string& item) {
    const site::GateRule& rule = gates_.rules[index];
    const site::GateRule& before = gates_.rules[index - 1];
    const std::string item_before = fmt::format("gates.rules[{}]", index);
    if (have({item + ".open_at", item_before + ".open_at"}) && !(rule.open_level > before.open_level)) {
      problem(at(item + ".open_at"),
              fmt::format("the rules stand in the order of the rising reservoir: open_at {} must lie above "
                          "that of the rule before, {}",
                          length(rule.open_level), length(before.open_level)));
      return;
    }
    const bool each_holds = rule.close_level < rule.open_level && before.close_level < before.open_level;
    if (have({item + ".close_at", item_before + ".close_at", item + ".open_at", item_before + ".open_at"}) && each_holds &&
        !(rule.close_level > before.close_level))
      problem(
          at(item + ".close_at"),
          fmt::format("close_at {} must lie above that of the rule before, {}: the falling reservoir would end both rules at "
                      "once, the gates would shut, and the level would rise and open them again",
                      length(rule.close_level), length(before.close_level)));
    const auto opened = opened_by(index);
    const auto opened_before = opened_by(index - 1);
    if (opened && opened_before && *opened < *opened_before)
      problem(
          at(item + ".pattern"),
          fmt::format("this rule opens the gates by {} in all, less than the {} of the rule before: they would close as the "
                      "reservoir rises and open as it falls, and swing about {}",
                      length(*opened), length(*opened_before), length(rule.open_level)));
  }
};

}  // namespace

void check_gates(const Draft& draft, ProblemList& problems) {
  GateChecker(draft, problems).run();
}

}  // namespace quell::io
