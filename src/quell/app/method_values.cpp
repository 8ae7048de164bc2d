#include "quell/app/method_values.h"

#include <fmt/format.h>

namespace quell::app {

tl::expected<std::vector<double>, std::string> written_out(const Method& method,
                                                           const std::vector<std::vector<double>>& values) {
  std::vector<double> row;
  const std::vector<double>* first_list = nullptr;
  for (std::size_t i = 0; i < values.size(); ++i) {
    row.insert(row.end(), values[i].begin(), values[i].end());
    if (!method.inputs[i].list) continue;
    const auto name = method.inputs[i].name.view();
    if (values[i].empty()) return tl::unexpected(fmt::format("{} holds no number", name));
    if (first_list == nullptr) first_list = &values[i];
    if (values[i].size() != first_list->size())
      return tl::unexpected(fmt::format("{} holds {} numbers where the list before it holds {}: the lists are equally long",
                                        name, values[i].size(), first_list->size()));
  }
  return row;
}

}  // namespace quell::app
