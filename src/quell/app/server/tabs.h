// The browser tabs that show the page: each says every five seconds that it is there.
#pragma once

#include <chrono>
#include <map>
#include <string>

namespace quell::app::server {

class Tabs {
 public:
  using Time = std::chrono::steady_clock::time_point;

  /// Browsers let a hidden tab speak once a minute.
  static constexpr std::chrono::seconds silence{75};
  static constexpr std::size_t most = 1000;  ///< more than anybody opens: keeps a mad page from filling the memory

  void seen(const std::string& id, Time now) {
    forget_silent(now);
    if (last_.size() < most || last_.count(id) > 0) last_[id] = now;
  }
  void closed(const std::string& id) { last_.erase(id); }

  /// Without the one that asks.
  std::size_t others(const std::string& id, Time now) {
    forget_silent(now);
    return last_.size() - last_.count(id);
  }

 private:
  std::map<std::string, Time> last_;

  void forget_silent(Time now) {
    std::erase_if(last_, [&](const auto& tab) { return now - tab.second > silence; });
  }
};

}  // namespace quell::app::server
