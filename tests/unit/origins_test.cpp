// Where the checks say that their numbers come from: tailwater, apron, and the flow at the discharge that decides.
#include "quell/checks/origins.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

#include "quell/design/design.h"
#include "quell/io/site_file.h"

namespace quell {
namespace {

using site::TailwaterCase;

/// A view of a site that has nothing but what the origins look at.
struct Bare {
  site::Site site{};
  const dissipators::TypeRecord& type = dissipators::catalogue().front()->record();
  site::ChuteGeometry geometry{};
  dissipators::Structure structure{};
  site::Study study{};

  checks::BasinView view(double apron_level = 0.0) const {
    return {.site = site,
            .type = type,
            .geometry = geometry,
            .states = {},
            .wettest = {},
            .structure = structure,
            .apron_level = apron_level,
            .width = 20.0,
            .study = study,
            .patterns = {}};
  }
  StepInput tailwater(TailwaterCase tailwater_case) const { return checks::tailwater_level(view(), 373.0, tailwater_case); }
};

TEST(Origins, ATableOfTheTailwaterIsAKeyAndALoweredOneIsToldOf) {
  Bare bare;
  bare.site.river.source = site::TailwaterSource::rating;
  EXPECT_EQ(bare.tailwater(TailwaterCase::low).key, "river.rating");
  bare.site.river.bed_degradation = 0.5;
  const auto low = bare.tailwater(TailwaterCase::low);
  EXPECT_TRUE(low.key.empty());
  EXPECT_NE(low.words.find("less degradation"), std::string_view::npos);
  EXPECT_EQ(bare.tailwater(TailwaterCase::expected).key, "river.rating") << "the allowances lower the low case alone";
}

TEST(Origins, AComputedTailwaterNamesWhatItIsComputedFrom) {
  Bare bare;
  bare.site.river.source = site::TailwaterSource::section;
  EXPECT_NE(bare.tailwater(TailwaterCase::high).words.find("normal depth"), std::string_view::npos);
  bare.site.river.source = site::TailwaterSource::rating;
  bare.site.river.rating.is_computed = true;
  EXPECT_NE(bare.tailwater(TailwaterCase::high).words.find("gaugings"), std::string_view::npos);
  bare.site.river.reach.sections.resize(1);
  EXPECT_NE(bare.tailwater(TailwaterCase::high).words.find("survey"), std::string_view::npos);
}

TEST(Origins, AnApronOnALimitIsTheLimit) {
  Bare bare;
  bare.site.basin.has_lowest_apron = true;
  bare.site.basin.lowest_apron_level = 362.0;
  EXPECT_EQ(checks::apron_level(bare.view(362.0)).key, "basin.lowest_apron");
  EXPECT_TRUE(checks::apron_level(bare.view(363.0)).key.empty());
}

// The smallest Froude number may stand at any discharge of the range: its depth leads to the step that found it.
TEST(Origins, TheFlowThatDecidesIsFollowedFromTheCrest) {
  int followed = 0;
  for (const auto* example : {"01-gravity-dam", "05-gated-dam"}) {
    const auto file = io::read_site_file(QUELL_ROOT "/examples/" + std::string(example) + "/site.toml");
    ASSERT_TRUE(file.good());
    const auto types = dissipators::catalogue();
    const auto result = design::run_design(file.site, {.types = types, .with_workings = true});
    ASSERT_TRUE(result);
    for (const auto& option : result->options) {
      const auto waves = std::find_if(option.findings.begin(), option.findings.end(),
                                      [](const Finding& finding) { return finding.id == "jump.waves"; });
      if (!option.sized || waves == option.findings.end()) continue;
      const auto number = step_behind(*waves, option.working);
      ASSERT_TRUE(number.found());
      EXPECT_TRUE(origin_of_input(option.working, number, 1).found()) << example << " " << option.type->record().id.view();
      ++followed;
    }
  }
  EXPECT_GT(followed, 8);
}

}  // namespace
}  // namespace quell
