// What holds for every record: ids, sources, curves, and the names on which users' scripts rely.
#include "quell/app/method_index.h"

#include <gmock/gmock.h>

#include <algorithm>
#include <set>

#include "quell/base/curve.h"
#include "quell/base/source.h"

namespace quell::app {
namespace {

using ::testing::UnorderedElementsAreArray;

std::vector<std::string> names_of(std::span<const Symbol> symbols) {
  std::vector<std::string> names;
  for (const Symbol& symbol : symbols) names.emplace_back(symbol.name.view());
  return names;
}

/// subject.quantity or subject.quantity.basis: lower case, digits and underscores between one or two dots.
bool is_well_formed(const std::string& id) {
  const auto allowed = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '.'; };
  const auto dots = std::count(id.begin(), id.end(), '.');
  return dots >= 1 && dots <= 2 && std::all_of(id.begin(), id.end(), allowed) && id.front() >= 'a' && id.back() != '.' &&
         id.find("..") == std::string::npos;
}

TEST(MethodIndex, IdsAreUniqueAndWellFormed) {
  EXPECT_FALSE(is_well_formed("Jump.length"));
  EXPECT_FALSE(is_well_formed("jump"));
  EXPECT_FALSE(is_well_formed("jump..length"));
  std::set<std::string> ids;
  for (const Method* method : all_methods()) {
    const std::string id(method->id.view());
    EXPECT_TRUE(is_well_formed(id)) << id;
    EXPECT_TRUE(ids.insert(id).second) << id << " stands twice";
    EXPECT_EQ(find_method(id), method);
  }
  EXPECT_GT(ids.size(), 40U);
  EXPECT_EQ(find_method("jump.of_joy"), nullptr);
}

TEST(MethodIndex, SymbolsAreUniqueWithinAMethodAndRangesAreInOrder) {
  for (const Method* method : all_methods()) {
    std::set<std::string> names;
    for (const auto symbols : {method->inputs, method->outputs})
      for (const Symbol& symbol : symbols) {
        EXPECT_TRUE(names.insert(std::string(symbol.name.view())).second) << method->id.view() << " " << symbol.name.view();
        EXPECT_LT(symbol.range.lowest, symbol.range.highest) << method->id.view() << " " << symbol.name.view();
      }
    EXPECT_FALSE(method->inputs.empty()) << method->id.view();
    EXPECT_FALSE(method->outputs.empty()) << method->id.view();
    EXPECT_NE(method->evaluate, nullptr) << method->id.view();
  }
}

TEST(MethodIndex, EverySourceIsInTheBibliography) {
  for (const Method* method : all_methods())
    EXPECT_NE(find_source(method->source.view()), nullptr) << method->id.view() << ": " << method->source.view();
  std::set<std::string_view> keys;
  for (const Source& source : all_sources()) EXPECT_TRUE(keys.insert(source.key).second) << source.key << " stands twice";
}

TEST(Curves, HaveTwoPointsInOrderAndASource) {
  EXPECT_FALSE(all_curves().empty());
  for (const Curve& curve : all_curves()) {
    EXPECT_GE(curve.x.size(), 2U) << curve.id;
    EXPECT_EQ(curve.x.size(), curve.y.size()) << curve.id;
    for (std::size_t i = 1; i < curve.x.size(); ++i) EXPECT_GT(curve.x[i], curve.x[i - 1]) << curve.id;
    EXPECT_NE(find_source(curve.source), nullptr) << curve.id << ": " << curve.source;
    EXPECT_FALSE(curve.place.empty()) << curve.id;
    EXPECT_GT(curve.reading_error, 0.0) << curve.id;
  }
}

struct FixedMethod {
  const char* id;
  std::vector<std::string> inputs;
  std::vector<std::string> outputs;
};

/// The ids that outside scripts call, with their symbols. A change here breaks users.
const std::vector<FixedMethod> fixed_methods = {
    {"jump.sequent_depth.rectangular", {"y1", "V1"}, {"y2"}},
    {"jump.sequent_depth.trapezoidal", {"b", "m", "y1", "Q"}, {"y2"}},
    {"jump.sequent_depth.circular", {"D", "y1", "Q"}, {"y2"}},
    {"jump.energy_loss.rectangular", {"y1", "y2"}, {"dE"}},
    {"jump.length.em25", {"F1", "y2"}, {"Lj"}},
    {"jump.sequent_depth.positive_step", {"y1", "V1", "s"}, {"y2"}},
    {"section.critical_depth.rectangular", {"q"}, {"yc"}},
    {"section.critical_depth.trapezoidal", {"b", "m", "Q"}, {"yc"}},
    {"section.critical_depth.circular", {"D", "Q"}, {"yc"}},
    {"section.normal_depth.trapezoidal", {"b", "m", "S", "n", "Q"}, {"yn"}},
    {"chute.boundary_layer.em1603", {"L", "ks"}, {"delta"}},
    {"chute.cavitation_index", {"p0", "pv", "V"}, {"sigma"}},
    {"crest.discharge.ogee", {"He", "Hd", "P", "L"}, {"Q"}},
    {"crest.profile.ogee", {"x", "Hd"}, {"y"}},
    {"protection.riprap.isbash", {"V", "s", "C"}, {"D50"}},
    {"protection.riprap.em25", {"V"}, {"D"}},
    {"protection.creep_ratio.lane", {"Lv", "Lh", "dH"}, {"C"}},
    {"model.scale.froude", {"Lr"}, {"Vr", "Qr", "Tr"}},
};

TEST(MethodIndex, HoldsTheFixedIdsWithExactlyTheirSymbols) {
  for (const FixedMethod& fixed : fixed_methods) {
    const Method* method = find_method(fixed.id);
    ASSERT_NE(method, nullptr) << fixed.id;
    EXPECT_THAT(names_of(method->inputs), UnorderedElementsAreArray(fixed.inputs)) << fixed.id;
    EXPECT_THAT(names_of(method->outputs), UnorderedElementsAreArray(fixed.outputs)) << fixed.id;
  }
}

}  // namespace
}  // namespace quell::app
