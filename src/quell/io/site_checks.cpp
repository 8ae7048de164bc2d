#include "quell/io/site_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "quell/io/draft_view.h"
#include "quell/io/nearest.h"

namespace quell::io {
namespace {

class StructureChecker : private DraftView {
 public:
  StructureChecker(const Draft& draft, std::span<const std::string_view> known_types, ProblemList& problems)
      : DraftView(draft), site_(draft.site), known_types_(known_types), problems_(problems) {}

  void run() {
    crest();
    reaches();
    steps();
    widths();
    levels();
    apron();
    types();
  }

 private:
  const site::Site& site_;
  std::span<const std::string_view> known_types_;
  ProblemList& problems_;

  void problem(Place place, std::string message) { problems_.problem(place, std::move(message)); }

  /// Bed level at which the chute starts, as far as it is known without the shape of the ogee.
  double start_level() const { return site_.crest.has_fall() ? site_.crest.floor_level : site_.crest.crest_level; }
  std::string_view start_key() const { return site_.crest.has_fall() ? "crest.floor_level" : "crest.level"; }
  std::string_view start_words() const { return site_.crest.has_fall() ? "the floor below the crest" : "the crest"; }

  void crest() {
    const site::Crest& crest = site_.crest;
    if (!have({"crest.shape"})) return;
    if (crest.has_fall() && have({"crest.approach_depth"}) && crest.approach_depth == 0.0)
      problem(at("crest.approach_depth"),
              fmt::format("approach_depth must be greater than zero for a {} crest: it is the height of the weir, on which its "
                          "discharge depends",
                          name_of(crest.shape)));
    if (have({"crest.floor_level", "crest.level"}) && !(crest.floor_level < crest.crest_level))
      problem(at("crest.floor_level"), fmt::format("floor_level {} must lie below the crest at {}: the water falls onto it",
                                                   length(crest.floor_level), length(crest.crest_level)));
    if (have({"crest.floor_level", "river.bed_level"}) && crest.floor_level <= site_.river.bed_level)
      problem(
          at("crest.floor_level"),
          fmt::format("floor_level {} must lie above the river bed at {}: the chute starts there and runs down to the apron",
                      length(crest.floor_level), length(site_.river.bed_level)));
    if (!have({"crest.developed_length", "crest.net_width", "crest.sidewall_angle"})) return;
    const double longest = crest.net_width / std::sin(crest.sidewall_angle);
    if (crest.developed_length < crest.net_width)
      problem(at("crest.developed_length"),
              fmt::format("developed_length {} is smaller than the width that the labyrinth spans, net_width {}",
                          length(crest.developed_length), length(crest.net_width)));
    else if (crest.developed_length > longest)
      problem(at("crest.developed_length"),
              fmt::format("developed_length {} does not fit: side walls at {:.4g} degrees to the flow have at most {} in a "
                          "net_width of {}; lessen it, or lessen sidewall_angle",
                          length(crest.developed_length), crest.sidewall_angle * 180.0 / std::numbers::pi, length(longest),
                          length(crest.net_width)));
  }

  void reaches() {
    if (have({"chute.slope"})) return;  // one face has no levels; with both, the pair is the problem
    const auto& all = site_.chute.reaches;
    double above = start_level();
    bool above_known = have({start_key()});
    for (std::size_t i = 0; i < all.size() && have({"chute.reaches"}); ++i) {
      const std::string key = fmt::format("chute.reaches[{}].end_level", i + 1);
      const std::string item = fmt::format("chute.reaches[{}]", i + 1);
      const bool is_last = i + 1 == all.size();
      if (is_last && have({key}))
        problem(at(key), "the last reach runs down to the apron and takes no end_level; delete it or add a reach below");
      if (!is_last && !have({key}) && have({item}))
        problem(at(item),
                fmt::format("reach {} of {} lacks end_level; only the last runs down to the apron", i + 1, all.size()));
      if (is_last || !have({key})) {
        above_known = false;
        continue;
      }
      if (above_known && !(all[i].end_level < above))
        problem(at(key), fmt::format("end_level {} must lie below {}, where this reach starts: the chute goes down",
                                     length(all[i].end_level), length(above)));
      if (have({"river.bed_level"}) && all[i].end_level <= site_.river.bed_level)
        problem(at(key),
                fmt::format(
                    "end_level {} must lie above the river bed at {}: the last reach starts there and runs down to the apron",
                    length(all[i].end_level), length(site_.river.bed_level)));
      above = all[i].end_level;
      above_known = true;
    }
  }

  void steps() {
    const site::Chute& chute = site_.chute;
    if (!have({"chute.surface"})) return;
    if (chute.is_stepped && !typed("chute.step_height"))
      problem(at("chute.surface"), "a stepped chute needs step_height, the vertical height of a step");
    if (!chute.is_stepped && typed("chute.step_height"))
      problem(at("chute.step_height"), "step_height is for a stepped chute; set surface = \"stepped\" or delete it");
    if (chute.is_stepped && chute.reaches.size() > 1)
      problem(at("chute.reaches"), "a stepped chute has one straight face: give slope instead of reaches");
    if (chute.is_stepped && have({"chute.width", "chute.end_width"}) && chute.width != chute.end_width)
      problem(at("chute.end_width"), "a stepped chute keeps its width: the published methods hold for parallel walls only");
  }

  void widths() {
    const site::Chute& chute = site_.chute;
    if (have({"crest.net_width", "chute.width"}) && chute.width < site_.crest.net_width)
      problem(at("chute.width"), fmt::format("the chute's width {} is smaller than the clear width of the crest, net_width {}",
                                             length(chute.width), length(site_.crest.net_width)));
    const bool both = have({"chute.width", "chute.end_width"});
    if (both && chute.width != chute.end_width && !have({"chute.end_width_level"}))
      problem(at("chute.end_width"), "end_width differs from width; add end_width_level, the bed level at which it is reached");
    if (both && chute.width != chute.end_width && have({"chute.end_width_level", start_key(), "river.bed_level"}) &&
        !(chute.end_width_level < start_level() && chute.end_width_level >= site_.river.bed_level))
      problem(at("chute.end_width_level"),
              fmt::format("end_width_level {} must lie between the river bed at {} and {} at {}", length(chute.end_width_level),
                          length(site_.river.bed_level), start_words(), length(start_level())));
    basin_width();
  }

  void basin_width() {
    const site::BasinWishes& basin = site_.basin;
    if (!have({"basin.width"})) return;
    if (!basin.width_is_free && have({"basin.largest_width"}))
      problem(at("basin.largest_width"), "largest_width has no meaning with a fixed width; set width = \"free\" or delete it");
    if (basin.width_is_free && have({"basin.largest_width", "chute.width"}) && basin.largest_width < site_.chute.width)
      problem(at("basin.largest_width"), fmt::format("largest_width {} is smaller than the chute's width {}",
                                                     length(basin.largest_width), length(site_.chute.width)));
  }

  void levels() {
    if (have({"crest.level", "river.bed_level"}) && !(site_.crest.crest_level > site_.river.bed_level))
      problem(at("crest.level"), fmt::format("the crest at {} must lie above the river bed at {}",
                                             length(site_.crest.crest_level), length(site_.river.bed_level)));
    if (have({"ground.level", "ground.foundation_level"}) && site_.ground.foundation_level > site_.ground.ground_level)
      problem(at("ground.foundation_level"),
              fmt::format("the foundation at {} lies above the ground at {}", length(site_.ground.foundation_level),
                          length(site_.ground.ground_level)));
  }

  void apron() {
    const site::BasinWishes& basin = site_.basin;
    for (const auto& [key, level] :
         {std::pair{"basin.highest_apron", basin.highest_apron_level}, {"basin.lowest_apron", basin.lowest_apron_level}})
      if (have({key, start_key()}) && level >= start_level())
        problem(at(key), fmt::format("the apron at {} would not lie below {} at {}", length(level), start_words(),
                                     length(start_level())));
    if (have({"basin.highest_apron", "basin.lowest_apron"}) && basin.highest_apron_level < basin.lowest_apron_level)
      problem(at("basin.highest_apron"), fmt::format("highest_apron {} lies below lowest_apron {}",
                                                     length(basin.highest_apron_level), length(basin.lowest_apron_level)));
  }

  void types() {
    const std::vector<std::string>& wanted = site_.basin.types;
    if (!have({"basin.types"}) || known_types_.empty()) return;
    for (std::size_t i = 0; i < wanted.size(); ++i) {
      const Place place = member_at("basin.types", i);
      if (std::find(wanted.begin(), wanted.begin() + static_cast<std::ptrdiff_t>(i), wanted[i]) !=
          wanted.begin() + static_cast<std::ptrdiff_t>(i)) {
        problem(place, fmt::format("the type '{}' stands twice", wanted[i]));
      } else if (std::find(known_types_.begin(), known_types_.end(), wanted[i]) == known_types_.end()) {
        const std::string_view meant = nearest(wanted[i], known_types_);
        problem(place, fmt::format("unknown type '{}'; {} ({})", wanted[i].substr(0, 60),
                                   meant.empty() ? std::string("take one of the known types")
                                                 : fmt::format("did you mean '{}'?", meant),
                                   fmt::join(known_types_, ", ")));
      }
    }
  }
};

}  // namespace

void check_site(const Draft& draft, std::span<const std::string_view> known_types, ProblemList& problems) {
  check_discharges(draft, problems);
  StructureChecker(draft, known_types, problems).run();
  check_gates(draft, problems);
  check_reservoir(draft, problems);
  check_river(draft, problems);
  check_slab(draft, problems);
}

}  // namespace quell::io
