#include "quell/io/site_checks.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <numbers>

#include "quell/io/nearest.h"

namespace quell::io {
namespace {

class SiteChecker {
 public:
  SiteChecker(const Draft& draft, std::span<const std::string_view> known_types, ProblemList& problems)
      : draft_(draft), site_(draft.site), known_types_(known_types), problems_(problems) {}

  void run() {
    discharges();
    floods();
    crest();
    reaches();
    steps();
    widths();
    levels();
    apron();
    section();
    tailwater();
    types();
  }

 private:
  const Draft& draft_;
  const site::Site& site_;
  std::span<const std::string_view> known_types_;
  ProblemList& problems_;

  bool have(std::initializer_list<std::string_view> keys) const {
    return std::all_of(keys.begin(), keys.end(),
                       [&](std::string_view key) { return draft_.read.find(key) != draft_.read.end(); });
  }

  Place at(std::string_view key) const {
    const auto found = draft_.read.find(key);
    return found == draft_.read.end() ? Place{} : found->second;
  }

  bool typed(std::string_view key) const { return at(key).line > 0; }

  /// Of a member of a list; of the list where that is a default.
  Place member_at(std::string_view key, std::size_t index) const {
    const auto found = draft_.member_places.find(key);
    return found != draft_.member_places.end() && index < found->second.size() ? found->second[index] : at(key);
  }

  /// The first of two keys that stands in the file: a default cannot be pointed at.
  Place at_typed(std::string_view key, std::string_view other) const { return typed(key) ? at(key) : at(other); }

  void problem(Place place, std::string message) { problems_.problem(place, std::move(message)); }

  std::string length(double si) const { return quantity(si, dimension::length); }
  std::string discharge(double si) const { return quantity(si, dimension::discharge); }
  std::string quantity(double si, Dimension d) const {
    return fmt::format("{:.6g} {}", to_unit(si, d, site_.units), unit_symbol(d, site_.units));
  }

  void discharges() {
    const site::Discharges& d = site_.discharges;
    if (have({"discharges.design_flood", "discharges.check_flood"}) && d.check_flood < d.design_flood)
      problem(at("discharges.check_flood"),
              fmt::format("check_flood {} is smaller than design_flood {}; it is the largest discharge of the range",
                          discharge(d.check_flood), discharge(d.design_flood)));
    if (have({"discharges.design_flood", "discharges.smallest"}) && !(d.smallest < d.design_flood))
      problem(at("discharges.smallest"), fmt::format("smallest {} must be smaller than design_flood {}", discharge(d.smallest),
                                                     discharge(d.design_flood)));
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

  void section() {
    const site::RiverSection& s = site_.river.section;
    if (have({"river.section.bottom_width", "river.section.side_slope"}) && s.bottom_width == 0.0 && s.side_slope == 0.0)
      problem(at("river.section.bottom_width"), "a section with neither bottom width nor sloping banks holds no water");
  }

  void tailwater() {
    const site::TailwaterRating& rating = site_.river.rating;
    if (!have({"river.rating.checked"})) return;
    const Place place = at("river.rating");
    const auto say = [&](std::string_view which, double needed, std::string_view end, double found) {
      problem(place, fmt::format("the rating {} at {}, but {} is {}; add a row for {} or {}", end, discharge(found), which,
                                 discharge(needed), discharge(needed), which == "smallest" ? "less" : "more"));
    };
    if (have({"discharges.smallest"}) && rating.discharge.front() > site_.discharges.smallest)
      say("smallest", site_.discharges.smallest, "starts", rating.discharge.front());
    if (have({"discharges.check_flood"}) && rating.discharge.back() < site_.discharges.check_flood)
      say("check_flood", site_.discharges.check_flood, "ends", rating.discharge.back());
    const std::vector<double>& expected = rating.level[site::index_of(site::TailwaterCase::expected)];
    const std::vector<double>& high = rating.level[site::index_of(site::TailwaterCase::high)];
    if (have({"crest.level"}) && site_.river.bed_level >= site_.crest.crest_level) return;  // told already
    if (have({"river.bed_level"}) && expected.front() < site_.river.bed_level)
      problem(place, fmt::format("the rating starts at level {}, below the river bed at {}", length(expected.front()),
                                 length(site_.river.bed_level)));
    if (!have({"crest.level", "discharges.check_flood"})) return;
    for (std::size_t i = 0; i < high.size(); ++i)
      if (rating.discharge[i] <= site_.discharges.check_flood && high[i] >= site_.crest.crest_level) {
        problem(place, fmt::format(
                           "at {} the tailwater {} reaches the crest at {}; a crest drowned from below is outside this program",
                           discharge(rating.discharge[i]), length(high[i]), length(site_.crest.crest_level)));
        return;
      }
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
  SiteChecker(draft, known_types, problems).run();
}

}  // namespace quell::io
