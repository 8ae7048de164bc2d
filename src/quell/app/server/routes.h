// From an admitted request to its answer: the list of everything that the server answers.
#pragma once

#include <mutex>

#include "quell/app/server/answers.h"
#include "quell/app/server/document.h"
#include "quell/app/server/guard.h"
#include "quell/app/server/http.h"
#include "quell/app/server/tabs.h"

namespace quell::app::server {

class Routes {
 public:
  explicit Routes(Document& document) : document_(document), answers_(document) {}

  /// The request has passed the guard.
  Answer answer(const Request& request, const Wanted& wanted);

 private:
  friend struct Endpoints;
  Document& document_;
  Answers answers_;
  std::mutex tabs_mutex_;
  Tabs tabs_;

  std::string document_answer(const std::string& tab);
  Answer post_change(const nlohmann::json& body);
  std::string post_open(const nlohmann::json& body);
  Answer post_save(const nlohmann::json& body);
  std::string post_tab(const nlohmann::json& body);
};

}  // namespace quell::app::server
