// Who may ask. The server answers its own page and nobody else: other pages in the same browser and other users of the machine
// can reach the port, so every request must carry
//   - a token in its path, 128 random bits, new at each start and told only on the terminal and to the browser that is opened;
//   - a Host that is this address, or a foreign name could be pointed at 127.0.0.1 and its page would be of our origin;
//   - no Origin but ours: browsers send one with every POST of a page.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "quell/app/server/http.h"

namespace quell::app::server {

/// 128 bits from the system, as 32 hex digits.
std::string random_token();

/// Whether the two are equal, in a time that does not depend on where they differ.
bool same_bytes(std::string_view given, std::string_view expected);

/// What a request asks for, once it may ask.
struct Wanted {
  std::string name;  ///< behind the token: "document/open"; "" for the page
  std::string tab;   ///< of the query "?tab=…", may be empty
};

class Guard {
 public:
  Guard(std::string token, int port) : token_(std::move(token)), port_(port) {}

  /// "http://127.0.0.1:8470/<token>/"
  std::string address() const;

  /// The error is the answer to give: 403 without any hint where a secret or an address is wrong.
  tl::expected<Wanted, Answer> admit(const Request& request) const;

 private:
  std::string token_;
  int port_;

  bool is_ours(std::string_view authority) const;
};

/// The JSON object in a body: UTF-8, no key twice, nested no deeper than 32. The error is a sentence.
tl::expected<nlohmann::json, std::string> parse_body(std::string_view body);

}  // namespace quell::app::server
