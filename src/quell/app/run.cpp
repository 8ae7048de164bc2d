// The command line. The only file that includes CLI11, which is slow to compile.
#include <CLI/CLI.hpp>
#include <cstdio>
#include <exception>

#include "quell/app/commands.h"
#include "quell/io/nearest.h"

namespace quell::app {
namespace {

constexpr const char* description =
    "quell sizes stilling basins below spillways over the whole range of discharges.\n"
    "It supports and does not replace the judgement of a licensed engineer and local codes.";
constexpr const char* exit_codes =
    "Exit codes: 0 done, all requirements met; 1 done, some requirement fails; 2 bad input or usage;\n"
    "3 could not be done (no physical answer, or a file could not be written); 70 a fault of quell's.";

void add_common(CLI::App& command, Common& common) {
  command.add_flag("--json", common.json, "print one JSON object to stdout, in SI, and nothing else there");
  command.add_option("--units", common.units, "units of printed results: si or us")
      ->transform(CLI::CheckedTransformer(std::map<std::string, UnitSystem>{{"si", UnitSystem::si}, {"us", UnitSystem::us}}))
      ->option_text("si|us");
}

std::vector<std::string> verbs_of(const CLI::App& program) {
  std::vector<std::string> verbs;
  for (const CLI::App* command : program.get_subcommands(std::function<bool(const CLI::App*)>{}))
    verbs.push_back(command->get_name());
  return verbs;
}

bool is_verb(const CLI::App& program, std::string_view verb) {
  const auto verbs = verbs_of(program);
  return std::find(verbs.begin(), verbs.end(), verb) != verbs.end();
}

int refuse_verb(const CLI::App& program, const std::string& verb) {
  const auto names = verbs_of(program);
  const std::vector<std::string_view> verbs(names.begin(), names.end());
  const auto nearest = io::nearest(verb, verbs);
  std::fprintf(stderr, "quell: no verb '%s'%s; 'quell --help' lists them\n", verb.c_str(),
               nearest.empty() ? "" : (" (did you mean '" + std::string(nearest) + "'?)").c_str());
  return exit_bad_input;
}

}  // namespace

int run(int argc, char** argv) try {
  CLI::App program(description, "quell");
  program.footer(exit_codes);
  program.set_version_flag("--version", std::string("quell ") + QUELL_VERSION);
  program.require_subcommand(1);
  int result = exit_done;

  CalcArguments calc_arguments;
  auto* calc_command = program.add_subcommand("calc", "compute one method: calc METHOD name=value …");
  calc_command->add_option("method", calc_arguments.method, "id of the method, as listed by 'quell methods'")
      ->required()
      ->option_text("METHOD");
  calc_command->add_option("values", calc_arguments.values, "inputs, such as y1=0.6m V1='60 ft/s'; a bare number is SI")
      ->option_text("name=value …");
  add_common(*calc_command, calc_arguments.common);
  calc_command->callback([&] { result = calc(calc_arguments); });

  MethodsArguments methods_arguments;
  auto* methods_command = program.add_subcommand("methods", "list the methods: id, title, symbols, range, source");
  methods_command->add_option("pattern", methods_arguments.pattern, "part of an id, a title or a symbol")
      ->option_text("[PATTERN]");
  methods_command->add_flag("--markdown", methods_arguments.markdown, "the reference page of docs/methods.md");
  add_common(*methods_command, methods_arguments.common);
  methods_command->callback([&] { result = methods(methods_arguments); });

  CheckArguments check_arguments;
  auto* check_command = program.add_subcommand("check", "read and judge a site file, compute nothing");
  check_command->add_option("site", check_arguments.site, "site file (TOML)")->option_text("SITE");
  check_command->add_flag("--reference", check_arguments.reference, "print the reference of all keys instead");
  add_common(*check_command, check_arguments.common);
  check_command->callback([&] { result = check(check_arguments); });

  DesignArguments design_arguments;
  auto* design_command = program.add_subcommand("design", "size the basin over the whole range of discharges");
  design_command->add_option("site", design_arguments.site, "site file (TOML)")->required()->option_text("SITE");
  design_command->add_option("--out", design_arguments.out, "folder for report.html, result.json and the figures")
      ->option_text("DIR");
  design_command->add_flag("--all-types", design_arguments.all_types,
                           "every type of the catalogue, not only the site file's candidates");
  add_common(*design_command, design_arguments.common);
  design_command->callback([&] { result = design(design_arguments); });

  VerifyArguments verify_arguments;
  auto* verify_command = program.add_subcommand("verify", "run the validation book: published numbers against this program");
  verify_command->add_option("pattern", verify_arguments.pattern, "part of a file name or a method id")
      ->option_text("[PATTERN]");
  verify_command->add_flag("--markdown", verify_arguments.markdown, "the book as a document");
  verify_command->add_option("--scatter", verify_arguments.scatter, "write a figure (SVG) of measured against computed values")
      ->option_text("FILE");
  add_common(*verify_command, verify_arguments.common);
  verify_command->callback([&] { result = verify(verify_arguments); });

  ServeArguments serve_arguments;
  auto* serve_command = program.add_subcommand("serve", "the page on this machine: prints its address on one line");
  serve_command->add_option("site", serve_arguments.site, "site file (TOML) to open")->option_text("[SITE]");
  serve_command->add_option("--port", serve_arguments.port, "port on 127.0.0.1; 0: a free one near 8470")
      ->check(CLI::Range(0, 65535))
      ->option_text("N");
  serve_command->add_flag("!--no-open", serve_arguments.open, "do not open the browser");
  serve_command->callback([&] { result = serve(serve_arguments); });

  if (argc > 1 && argv[1][0] != '-' && !is_verb(program, argv[1])) return refuse_verb(program, argv[1]);
  try {
    program.parse(argc, argv);
  } catch (const CLI::ParseError& error) {
    const int code = program.exit(error);
    return code == 0 ? exit_done : exit_bad_input;
  }
  return result;
} catch (const std::exception& error) {
  std::fprintf(stderr, "quell: a fault of ours: %s\nPlease report it with the command and the site file.\n", error.what());
  return exit_fault;
}

}  // namespace quell::app
