// A good site file that uses every kind of data: gates, outlets, surveyed river, bed, record, inflows, reservoir; and the CSV
// files that it names. Invented data.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "site_text.h"

namespace quell::test {

inline constexpr std::string_view good_data_site = R"toml(units = "SI"
[project]
name = "Invented"
[crest]
level = "130 m"
design_head = "8 m"
net_width = "30 m"
approach_depth = "20 m"
[gates]
count = 3
bay_width = "10 m"
full_opening = "9 m"
held_level = "138 m"
[[gates.patterns]]
name = "middle gate"
openings = ["0 m", "4 m", "0 m"]
levels = ["137 m", "138 m"]
[[gates.patterns]]
name = "all half"
openings = ["4 m", "4.5 m", "4 m"]
use = "check"
[[gates.rules]]
pattern = "middle gate"
open_at = "138.2 m"
close_at = "137.8 m"
[[gates.rules]]
pattern = "all half"
open_at = "138.8 m"
close_at = "138.1 m"
[[outlets]]
name = "bottom outlet"
centre_level = "108 m"
area = "4.5 m2"
guaranteed = "yes"
[chute]
slope = "0.8H:1V"
width = "34 m"
roughness_height = "0.6 mm"
[river]
bed_level = "100 m"
lag_allowance = "0.2 m"
[river.survey]
control = "normal"
control_slope = 0.002
uncertainty = "tailwater, field survey, fair n"
[[river.survey.sections]]
file = "s1.csv"
distance = "0 m"
left_bank = "10 m"
right_bank = "50 m"
n_channel = 0.035
n_left = 0.06
[[river.survey.sections]]
file = "s2.csv"
distance = "200 m"
left_distance = "180 m"
[river.bed]
mean_size = "24 mm"
dominant_discharge = "240 m3/s"
bed_width = "40 m"
mean_depth = "2.1 m"
bed_slope = 0.002
manning_n = 0.03
[floods]
climate_factor = 1.1
[floods.record]
file = "record.csv"
regional_skew = -0.1
[[floods.inflows]]
name = "100-year inflow"
file = "inflow.csv"
return_period = 100
[[floods.inflows]]
name = "1000-year inflow"
shape = "gamma"
return_period = 1000
time_to_peak = "6 h"
[reservoir]
file = "storage.csv"
dam_crest_level = "142 m"
[discharges]
design_inflow = "100-year inflow"
check_inflow = "1000-year inflow"
)toml";

inline std::map<std::string, std::string> good_data_files() {
  return {
      {"s1.csv", "station (m),level (m)\n0,112\n10,104\n20,99.5\n40,99.6\n50,104\n60,113\n"},
      {"s2.csv", "station (m),level (m),n\n0,111,0.06\n12,103,0.035\n22,99,0.035\n41,99.2,0.035\n52,104,0.06\n63,112,0.06\n"},
      {"record.csv",
       "year,flow (m3/s)\n1990,210\n1991,340\n1992,180\n1993,260\n1994,420\n1995,150\n1996,300\n1997,"
       "230\n1998,510\n1999,275\n2000,195\n"},
      {"inflow.csv", "time (h);flow (m3/s)\n0;20\n1;80\n2;300\n3;620\n4;400\n5;150\n6;60\n"},
      {"gauging.csv", "level (m),discharge (m3/s)\n101,10\n102,50\n103,120\n104,200\n"},
      {"storage.csv", "level (m),area (km2)\n120,0.4\n130,1.1\n138,1.9\n142,2.4\n"}};
}

/// Reads the site with its files in a folder of their own. `files` replaces some of them.
inline io::SiteFile read_data_site(std::string_view site, const std::map<std::string, std::string>& files = {}) {
  static int number = 0;
  const Folder folder("data" + std::to_string(++number));
  for (const auto& [name, text] : good_data_files()) folder.write(name, files.count(name) > 0 ? files.at(name) : text);
  for (const auto& [name, text] : files) folder.write(name, text);
  return io::read_site_file(folder.write("site.toml", site));
}

}  // namespace quell::test
