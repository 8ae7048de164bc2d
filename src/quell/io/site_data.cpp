#include "quell/io/site_data.h"

#include <fmt/format.h>

#include <algorithm>

#include "quell/io/csv_files.h"
#include "quell/io/draft_view.h"
#include "quell/io/input_text.h"
#include "quell/io/nearest.h"
#include "quell/io/rating_checks.h"

namespace quell::io {
namespace {

class SiteCompleter : private DraftView {
 public:
  SiteCompleter(Draft& draft, DataFiles files, ProblemList& problems)
      : DraftView(draft), draft_(draft), site_(draft.site), files_(std::move(files)), problems_(problems) {}

  void run() {
    site_.river.degradation_given = typed("river.bed_degradation");
    rating();
    river();
    floods();
    piers();
    for (std::size_t i = 0; i < site_.gates.rules.size(); ++i) rule(i);
  }

 private:
  Draft& draft_;
  site::Site& site_;
  DataFiles files_;
  ProblemList& problems_;

  /// Reads the file that `key` names with `read(bytes, its problems)`, and marks `owner` as checked where it is good.
  template <typename Read>
  void with_file(const std::string& key, const std::string& owner, Read read) {
    const auto name = draft_.files.find(key);
    if (name == draft_.files.end()) return;
    const std::string path = (files_.folder / name->second).string();
    const auto bytes = files_.read(name->second);
    if (!bytes) {
      problems_.problem(at(key), fmt::format("{}: {}", path, bytes.error()));
      return;
    }
    files_.digest_text += *bytes;
    ProblemList in_file(path, split_lines(*bytes));
    if (const auto fault = find_text_fault(*bytes)) {
      in_file.problem(fault->place, fault->message);
    } else if (read(std::string_view(*bytes), in_file)) {
      draft_.read[owner + ".checked"] = {};
    }
    in_file.hand_over(files_.found);
  }

  void rating() {
    if (!site_.river.has_rating()) return;
    if (draft_.files.count("river.rating.file") == 0) {
      if (complete_inline_rating() && check_inline_rating()) draft_.read["river.rating.checked"] = {};
      return;
    }
    for (const std::string_view key : {"river.rating.level", "river.rating.low", "river.rating.expected", "river.rating.high"})
      if (have({key})) return problems_.problem(at(key), "with a file, the levels stand in the file; delete them here");
    with_file("river.rating.file", "river.rating", [&](std::string_view text, ProblemList& in_file) {
      return read_rating_csv(text, site_.units, site_.river.rating, site_.river.has_spread, in_file);
    });
  }

  void river() {
    with_file("river.gauging.file", "river.gauging", [&](std::string_view text, ProblemList& in_file) {
      return read_gauging_csv(text, site_.units, site_.river.gauging, in_file);
    });
    with_file("river.survey.control_file", "river.survey.control_file", [&](std::string_view text, ProblemList& in_file) {
      bool has_spread = false;
      return read_rating_csv(text, site_.units, site_.river.reach.control_rating, has_spread, in_file);
    });
    for (std::size_t i = 0; i < site_.river.reach.sections.size(); ++i)
      surveyed_section(site_.river.reach.sections[i], fmt::format("river.survey.sections[{}]", i + 1));
  }

  void surveyed_section(site::CrossSection& section, const std::string& item) {
    with_file(item + ".file", item, [&](std::string_view text, ProblemList& in_file) {
      return read_section_csv(text, site_.units, section, in_file);
    });
    if (!have({item + ".checked"})) return;
    if (!have({item + ".left_bank"})) section.left_bank = section.station.front();
    if (!have({item + ".right_bank"})) section.right_bank = section.station.back();
    if (section.point_n.empty() && !have({item + ".n_channel"}))
      problems_.problem(at(item), "this section needs n_channel, or a column n in its file");
    for (const std::string_view key : {".n_channel", ".n_left", ".n_right"})
      if (!section.point_n.empty() && typed(item + std::string(key))) {
        problems_.problem(at(item + std::string(key)),
                          "Manning's n stands in the file of this section already; keep one of the two");
        break;
      }
  }

  void floods() {
    with_file("floods.record.file", "floods.record", [&](std::string_view text, ProblemList& in_file) {
      return read_record_csv(text, site_.units, site_.floods.record, in_file);
    });
    for (std::size_t i = 0; i < site_.floods.inflows.size(); ++i) {
      const std::string item = fmt::format("floods.inflows[{}]", i + 1);
      with_file(item + ".file", item, [&](std::string_view text, ProblemList& in_file) {
        return read_hydrograph_csv(text, site_.units, site_.floods.inflows[i], in_file);
      });
    }
    with_file("reservoir.file", "reservoir", [&](std::string_view text, ProblemList& in_file) {
      return read_storage_csv(text, site_.units, site_.reservoir, in_file);
    });
  }

  /// Where the piers are not given, those between the bays.
  void piers() {
    if (!have({"gates.count", "crest.piers"}) || typed("crest.piers")) return;
    site_.crest.piers = site_.gates.count - 1;
    for (EchoedInput& input : files_.inputs)
      if (input.section == "crest" && input.key == "piers")
        input.typed = fmt::format("between the bays: {}", site_.crest.piers);
  }

  void rule(std::size_t index) {
    const std::string item = fmt::format("gates.rules[{}]", index + 1);
    if (!have({item + ".pattern"})) return;
    const std::string& name = draft_.rule_patterns[index];
    std::vector<std::string_view> names;
    names.reserve(site_.gates.patterns.size());
    for (const site::GatePattern& pattern : site_.gates.patterns) names.emplace_back(pattern.name);
    const auto found = std::find(names.begin(), names.end(), name);
    site_.gates.rules[index].pattern = static_cast<std::size_t>(found - names.begin());
    if (found != names.end()) {
      draft_.read[item + ".checked"] = {};
      return;
    }
    const std::string_view meant = nearest(name, names);
    problems_.problem(at(item + ".pattern"),
                      fmt::format("there is no pattern '{}' in [[gates.patterns]]; {}", name.substr(0, 60),
                                  !meant.empty()  ? fmt::format("did you mean '{}'?", meant)
                                  : names.empty() ? std::string("add it")
                                                  : fmt::format("known are '{}'", fmt::join(names, "', '"))));
  }

  /// Key of the list of levels of an inline rating; the expected ones have two names.
  std::string_view level_key(site::TailwaterCase which) const {
    if (which == site::TailwaterCase::low && have({"river.rating.low"})) return "river.rating.low";
    if (which == site::TailwaterCase::high && have({"river.rating.high"})) return "river.rating.high";
    return have({"river.rating.level"}) ? "river.rating.level" : "river.rating.expected";
  }

  /// One list of levels for the missing ones, equal lengths.
  bool complete_inline_rating() {
    site::TailwaterRating& rating = site_.river.rating;
    if (!have({"river.rating.discharge"})) return false;
    const std::vector<double> expected = rating.level[site::index_of(site::TailwaterCase::expected)];
    if (expected.empty()) {
      const bool was_mistyped = problems_.problem_count() > 0;
      if (!was_mistyped)
        problems_.problem(at("river.rating"), "the rating lacks level (or expected), a list as long as discharge");
      return false;
    }
    bool good = true;
    for (const site::TailwaterCase which : site::tailwater_cases) {
      std::vector<double>& level = rating.level[site::index_of(which)];
      if (level.empty()) {
        level = expected;
      } else {
        site_.river.has_spread = site_.river.has_spread || which != site::TailwaterCase::expected;
      }
      if (level.size() == rating.discharge.size()) continue;
      if (good)
        problems_.problem(member_at(level_key(which), 0), fmt::format("this list has {} levels, but there are {} discharges",
                                                                      level.size(), rating.discharge.size()));
      good = false;
    }
    return good;
  }

  bool check_inline_rating() {
    RatingPlaces places;
    places.discharge = [&](std::size_t row) { return member_at("river.rating.discharge", row); };
    places.level = [&](std::size_t row, site::TailwaterCase which) { return member_at(level_key(which), row); };
    places.own = {have({"river.rating.low"}), true, have({"river.rating.high"})};
    places.end = member_at("river.rating.discharge", 0);
    return check_rating(site_.river.rating, places, site_.units, problems_);
  }
};

}  // namespace

void complete_site(Draft& draft, DataFiles files, ProblemList& problems) {
  SiteCompleter(draft, std::move(files), problems).run();
}

}  // namespace quell::io
