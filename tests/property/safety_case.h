// The safety checks of an example: what their property tests start from.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <string_view>

#include "quell/design/design.h"
#include "quell/dissipators/catalogue.h"
#include "quell/io/site_file.h"

namespace quell::test {

inline site::Site example(std::string_view name) {
  const auto file = io::read_site_file(std::string(QUELL_ROOT "/examples/") + std::string(name) + "/site.toml");
  EXPECT_TRUE(file.good());
  return file.site;
}

inline checks::Safety safety_of(const site::Site& site, std::string_view type = "type_2") {
  const dissipators::Dissipator* types[] = {dissipators::find_dissipator(type)};
  const auto result = design::run_design(site, {.types = types});
  EXPECT_TRUE(result && result->options[0].sized);
  return result->options[0].safety;
}

}  // namespace quell::test
