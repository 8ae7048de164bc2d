#include "quell/io/site_data.h"

#include <fmt/format.h>

#include "quell/io/csv_files.h"
#include "quell/io/input_text.h"
#include "quell/io/rating_checks.h"

namespace quell::io {
namespace {

class SiteCompleter {
 public:
  SiteCompleter(Draft& draft, DataFiles files, ProblemList& problems)
      : draft_(draft), site_(draft.site), files_(std::move(files)), problems_(problems) {}

  void run() { rating(); }

 private:
  Draft& draft_;
  site::Site& site_;
  DataFiles files_;
  ProblemList& problems_;

  bool have(std::string_view key) const { return draft_.read.find(key) != draft_.read.end(); }
  Place at(std::string_view key) const {
    const auto found = draft_.read.find(key);
    return found == draft_.read.end() ? Place{} : found->second;
  }
  Place member_at(std::string_view key, std::size_t index) const {
    const auto found = draft_.member_places.find(key);
    return found != draft_.member_places.end() && index < found->second.size() ? found->second[index] : at(key);
  }

  /// Reads the file that `key` names with `read(bytes, its problems)`, and marks `owner` as checked where it is good.
  template <typename Read>
  void with_file(const std::string& key, const std::string& owner, Read read) {
    const auto name = draft_.files.find(key);
    if (name == draft_.files.end()) return;
    const std::filesystem::path path = files_.folder / name->second;
    const auto bytes = read_input_file(path);
    if (!bytes) {
      problems_.problem(at(key), fmt::format("{}: {}", path.string(), bytes.error()));
      return;
    }
    files_.digest_text += *bytes;
    ProblemList in_file(path.string(), split_lines(*bytes));
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
      if (have(key)) return problems_.problem(at(key), "with a file, the levels stand in the file; delete them here");
    with_file("river.rating.file", "river.rating", [&](std::string_view text, ProblemList& in_file) {
      return read_rating_csv(text, site_.units, site_.river.rating, site_.river.has_spread, in_file);
    });
  }

  /// Key of the list of levels of an inline rating; the expected ones have two names.
  std::string_view level_key(site::TailwaterCase which) const {
    if (which == site::TailwaterCase::low && have("river.rating.low")) return "river.rating.low";
    if (which == site::TailwaterCase::high && have("river.rating.high")) return "river.rating.high";
    return have("river.rating.level") ? "river.rating.level" : "river.rating.expected";
  }

  /// One list of levels for the missing ones, equal lengths.
  bool complete_inline_rating() {
    site::TailwaterRating& rating = site_.river.rating;
    if (!have("river.rating.discharge")) return false;
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
    places.own = {have("river.rating.low"), true, have("river.rating.high")};
    places.end = member_at("river.rating.discharge", 0);
    return check_rating(site_.river.rating, places, site_.units, problems_);
  }
};

}  // namespace

void complete_site(Draft& draft, DataFiles files, ProblemList& problems) {
  SiteCompleter(draft, std::move(files), problems).run();
}

}  // namespace quell::io
