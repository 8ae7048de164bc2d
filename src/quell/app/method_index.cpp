#include "quell/app/method_index.h"

#include <algorithm>
#include <vector>

#include "quell/design/quantities.h"
#include "quell/dissipators/catalogue.h"
#include "quell/hydraulics/methods.h"
#include "quell/io/nearest.h"

namespace quell::app {

std::span<const Method* const> all_methods() {
  static const std::vector<const Method*> list = [] {
    std::vector<const Method*> all;
    const auto add = [&](std::span<const Method* const> more) { all.insert(all.end(), more.begin(), more.end()); };
    add(hydraulics::methods());
    for (const auto* type : dissipators::catalogue()) add(type->record().methods);
    add(design::methods());
    std::sort(all.begin(), all.end(), [](const Method* a, const Method* b) { return a->id.view() < b->id.view(); });
    return all;
  }();
  return list;
}

const Method* find_method(std::string_view id) {
  for (const Method* method : all_methods())
    if (method->id.view() == id) return method;
  return nullptr;
}

std::string_view nearest_method(std::string_view id) {
  std::vector<std::string_view> ids;
  for (const Method* method : all_methods()) ids.push_back(method->id.view());
  return io::nearest(id, ids);
}

}  // namespace quell::app
