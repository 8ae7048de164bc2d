// The commands of the program, one file each. Every one returns the exit code and prints results to stdout, messages to stderr.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "quell/base/units.h"

namespace quell::app {

/// 0 done, all requirements met · 1 done, some requirement fails · 2 bad input or usage · 3 could not be done · 70 a fault of
/// ours.
enum ExitCode : int { exit_done = 0, exit_requirement_fails = 1, exit_bad_input = 2, exit_no_result = 3, exit_fault = 70 };

/// What every verb takes.
struct Common {
  bool json = false;
  std::optional<UnitSystem> units;  ///< what is printed; none: the site file's, or SI
};

struct CalcArguments {
  Common common;
  std::string method;
  std::vector<std::string> values;  ///< "y1=0.6m"
};
int calc(const CalcArguments& arguments);

struct MethodsArguments {
  Common common;
  std::string pattern;  ///< part of an id or title; empty: all
  bool markdown = false;
};
int methods(const MethodsArguments& arguments);

struct CheckArguments {
  Common common;
  std::string site;
  bool reference = false;  ///< print the reference of all keys instead
};
int check(const CheckArguments& arguments);

struct DesignArguments {
  Common common;
  std::string site;
  std::string out;  ///< folder; empty: none
  bool all_types = false;
};
int design(const DesignArguments& arguments);

struct VerifyArguments {
  Common common;
  std::string pattern;  ///< part of a file name or method id; empty: all
  bool markdown = false;
  std::string scatter;  ///< file for the figure of measured against computed; empty: none
};
int verify(const VerifyArguments& arguments);

struct ServeArguments {
  std::string site;  ///< empty: the copy that was left behind without a path, or a new document
  int port = 0;      ///< 0: a free one
  bool open = true;  ///< in the user's browser
};
int serve(const ServeArguments& arguments);

/// Parses the command line and runs one of them.
int run(int argc, char** argv);

}  // namespace quell::app
