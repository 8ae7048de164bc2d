// Checks of [river] and its sections.
#include <fmt/format.h>

#include <algorithm>

#include "quell/io/draft_view.h"
#include "quell/io/site_checks.h"

namespace quell::io {
namespace {

class RiverChecker : private DraftView {
 public:
  RiverChecker(const Draft& draft, ProblemList& problems) : DraftView(draft), site_(draft.site), problems_(problems) {}

  void run() {
    section();
    tailwater();
    gauging();
    survey();
    bed();
  }

 private:
  const site::Site& site_;
  ProblemList& problems_;

  void problem(Place place, std::string message) { problems_.problem(place, std::move(message)); }

  void section() {
    const site::RiverSection& s = site_.river.section;
    if (have({"river.section.bottom_width", "river.section.side_slope"}) && s.bottom_width == 0.0 && s.side_slope == 0.0)
      problem(at("river.section.bottom_width"), "a section with neither bottom width nor sloping banks holds no water");
  }

  void covers_discharges(const site::TailwaterRating& rating, Place place) {
    const auto say = [&](std::string_view which, double needed, std::string_view end, double found) {
      problem(place, fmt::format("the rating {} at {}, but {} is {}; add a row for {} or {}", end, discharge(found), which,
                                 discharge(needed), discharge(needed), which == "smallest" ? "less" : "more"));
    };
    if (have({"discharges.smallest"}) && rating.discharge.front() > site_.discharges.smallest)
      say("smallest", site_.discharges.smallest, "starts", rating.discharge.front());
    if (have({"discharges.check_flood"}) && rating.discharge.back() < site_.discharges.check_flood)
      say("check_flood", site_.discharges.check_flood, "ends", rating.discharge.back());
  }

  void tailwater() {
    const site::TailwaterRating& rating = site_.river.rating;
    if (!have({"river.rating.checked"})) return;
    const Place place = at("river.rating");
    covers_discharges(rating, place);
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

  void gauging() {
    if (!have({"river.gauging.checked"})) return;
    const std::vector<double>& level = site_.river.gauging.level;
    const double lowest = *std::min_element(level.begin(), level.end());
    if (have({"river.bed_level"}) && lowest < site_.river.bed_level)
      problem(at("river.gauging"), fmt::format("the lowest gauged level {} lies below the river bed at {}", length(lowest),
                                               length(site_.river.bed_level)));
    if (have({"crest.level"}) && lowest >= site_.crest.crest_level)
      problem(at("river.gauging"), fmt::format("the river lies higher than the crest: the lowest gauged level is {}, the crest "
                                               "lies at {}",
                                               length(lowest), length(site_.crest.crest_level)));
  }

  static std::string section_key(std::size_t index) { return fmt::format("river.survey.sections[{}]", index + 1); }

  static double lowest(const site::CrossSection& section) {
    return *std::min_element(section.level.begin(), section.level.end());
  }

  void survey() {
    const auto& sections = site_.river.reach.sections;
    if (!have({"river.survey.sections"}) || sections.empty()) return;
    for (std::size_t i = 0; i < sections.size(); ++i) {
      distances(sections, i);
      if (have({section_key(i) + ".checked"})) banks(sections[i], section_key(i));
    }
    const site::CrossSection& first = sections.front();
    if (have({section_key(0) + ".checked", "crest.level"}) && lowest(first) >= site_.crest.crest_level)
      problem(
          at(section_key(0) + ".file"),
          fmt::format("the river lies higher than the crest: the lowest point of the first section is at {}, the crest at {}",
                      length(lowest(first)), length(site_.crest.crest_level)));
    control(sections.back(), section_key(sections.size() - 1));
  }

  void distances(const std::vector<site::CrossSection>& sections, std::size_t i) {
    const std::string key = section_key(i) + ".distance";
    if (i > 0 && have({key, section_key(i - 1) + ".distance"}) && !(sections[i].distance > sections[i - 1].distance))
      problem(at(key), fmt::format("the sections go downstream: distance {} must be larger than that of the section before, {}",
                                   length(sections[i].distance), length(sections[i - 1].distance)));
    for (const std::string_view side : {".left_distance", ".right_distance"})
      if (i == 0 && have({section_key(0) + std::string(side)}))
        problem(at(section_key(0) + std::string(side)),
                "the first section has none before it: distances along the plains begin with the second");
  }

  void banks(const site::CrossSection& section, const std::string& item) {
    const double first = section.station.front(), last = section.station.back();
    for (const auto& [side, bank] :
         {std::pair{std::string_view("left_bank"), section.left_bank}, {"right_bank", section.right_bank}}) {
      const std::string key = fmt::format("{}.{}", item, side);
      if (have({key}) && (bank < first || bank > last)) {
        problem(at(key), fmt::format("{} {} lies outside the section, which goes from station {} to {}", side, length(bank),
                                     length(first), length(last)));
        return;
      }
    }
    if (!(section.left_bank < section.right_bank))
      problem(at_typed({item + ".right_bank", item + ".left_bank"}),
              fmt::format("left_bank {} must lie left of right_bank {}; stations grow from left to right, looking downstream",
                          length(section.left_bank), length(section.right_bank)));
  }

  void control(const site::CrossSection& last, const std::string& item) {
    const site::SurveyedReach& reach = site_.river.reach;
    if (have({"river.survey.control_file.checked"})) covers_discharges(reach.control_rating, at("river.survey.control_file"));
    if (!have({item + ".checked"})) return;
    const auto below = [&](std::string_view key, double level) {
      if (level <= lowest(last))
        problem(at(key), fmt::format("the water at the last section, {}, lies below its lowest point at {}", length(level),
                                     length(lowest(last))));
    };
    if (have({"river.survey.control_level"})) below("river.survey.control_level", reach.control_level[0]);
    if (have({"river.survey.control_file.checked"})) below("river.survey.control_file", reach.control_rating.level[0].front());
  }

  void bed() {
    const site::RiverBed& bed = site_.river.bed;
    if (have({"river.bed.coarse_size", "river.bed.mean_size"}) && bed.coarse_size < bed.mean_size)
      problem(at("river.bed.coarse_size"),
              fmt::format("coarse_size {} is smaller than mean_size {}", length(bed.coarse_size), length(bed.mean_size)));
  }
};

}  // namespace

void check_river(const Draft& draft, ProblemList& problems) {
  RiverChecker(draft, problems).run();
}

}  // namespace quell::io
