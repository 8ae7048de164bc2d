// quell check SITE: reads and judges a site file, computes nothing.
#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "quell/app/commands.h"
#include "quell/app/site_input.h"
#include "quell/io/schema.h"

namespace quell::app {
namespace {

nlohmann::ordered_json problems_json(const std::vector<io::Problem>& problems) {
  auto list = nlohmann::ordered_json::array();
  for (const auto& problem : problems)
    list.push_back({{"file", problem.file}, {"line", problem.line}, {"column", problem.column}, {"message", problem.message}});
  return list;
}

}  // namespace

bool report_problems(const io::SiteFile& file) {
  for (const auto& remark : file.remarks) fmt::print(stderr, "{}\n", io::to_text(remark, "remark"));
  for (const auto& problem : file.problems) fmt::print(stderr, "{}\n", io::to_text(problem));
  return file.good();
}

int check(const CheckArguments& arguments) {
  if (arguments.reference) {
    fmt::print("{}", io::site_file_reference());
    return exit_done;
  }
  if (arguments.site.empty()) {
    fmt::print(stderr, "quell check: name a site file, such as 'quell check site.toml'\n");
    return exit_bad_input;
  }
  const auto file = io::read_site_file(arguments.site);
  if (arguments.common.json) {
    const nlohmann::ordered_json json{{"path", file.path},
                                      {"digest", file.digest},
                                      {"good", file.good()},
                                      {"problems", problems_json(file.problems)},
                                      {"remarks", problems_json(file.remarks)}};
    fmt::print("{}\n", json.dump(2, ' ', false, nlohmann::json::error_handler_t::replace));
    return file.good() ? exit_done : exit_bad_input;
  }
  if (!report_problems(file)) {
    fmt::print(stderr, "{}: {} problem{}; nothing was computed.\n", file.path, file.problems.size(),
               file.problems.size() == 1 ? "" : "s");
    return exit_bad_input;
  }
  fmt::print("{}: good. {}\n", file.path, file.site.project.name);
  return exit_done;
}

}  // namespace quell::app
