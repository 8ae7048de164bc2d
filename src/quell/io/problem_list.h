// Collects the problems of one input file with their places and excerpts.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "quell/io/schema.h"
#include "quell/io/site_file.h"

namespace quell::io {

class ProblemList {
 public:
  /// `lines` must outlive the list; `file` is the name that messages show.
  ProblemList(std::string file, std::vector<std::string_view> lines) : file_(std::move(file)), lines_(std::move(lines)) {}

  void problem(Place place, std::string message) { problems_.push_back(make(place, std::move(message))); }
  void remark(Place place, std::string message) { remarks_.push_back(make(place, std::move(message))); }

  /// Problems and remarks in the order of the file, appended to those of `result`.
  void hand_over(SiteFile& result);

  const std::string& file() const { return file_; }
  std::string_view line(int number) const;  ///< empty where there is none
  std::size_t problem_count() const { return problems_.size(); }

 private:
  std::string file_;
  std::vector<std::string_view> lines_;
  std::vector<Problem> problems_;
  std::vector<Problem> remarks_;

  Problem make(Place place, std::string message) const;
};

}  // namespace quell::io
