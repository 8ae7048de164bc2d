#include "quell/output/drawing/figure_style.h"

namespace quell::output {

std::string_view figure_style() {
  return R"(
.quell-figure text{font-family:"Source Sans 3","Source Sans Pro","Segoe UI","Helvetica Neue","DejaVu Sans Condensed",Arial,
sans-serif;fill:#1c262b}
.f-text{font-size:9.6px}
.f-small{font-size:8.6px}
.f-quiet{font-size:8.6px;fill:#59666c!important}
.f-strong{font-size:9.8px;font-weight:600}
.f-heading{font-size:10.4px;font-weight:600;letter-spacing:.02em}
.f-halo{paint-order:stroke;stroke:#fff;stroke-width:3.2px;stroke-linejoin:round}
.f-axis{fill:none;stroke:#1c262b;stroke-width:.8}
.f-tick{fill:none;stroke:#1c262b;stroke-width:.7}
.f-grid{fill:none;stroke:#d9dee0;stroke-width:.5}
.f-concrete{fill:#d5d3cc;stroke:none}
.f-slab{fill:#bdbab1;stroke:#1c262b;stroke-width:1}
.f-stone{fill:none;stroke:#6b5a41;stroke-width:4;stroke-dasharray:5 1.4;stroke-linejoin:round}
.f-face{fill:none;stroke:#1c262b;stroke-width:1.5;stroke-linejoin:round}
.f-element{fill:#8d8a82;stroke:#1c262b;stroke-width:.9;stroke-linejoin:round}
.f-ground{fill:none;stroke:#6b5a41;stroke-width:1.3}
.f-ground-tick{fill:none;stroke:#6b5a41;stroke-width:.6}
.f-wall{fill:none;stroke:#1c262b;stroke-width:.9;stroke-dasharray:7 3}
.f-level{fill:none;stroke:#59666c;stroke-width:.6;stroke-dasharray:1.5 2.5}
.f-leader{fill:none;stroke:#59666c;stroke-width:.5}
.f-water-fill{fill:#cfe3ec;fill-opacity:.55;stroke:none}
.f-water-1{fill:none;stroke:#0b5a7d;stroke-width:1.9;stroke-linejoin:round}
.f-water-2{fill:none;stroke:#0b5a7d;stroke-width:1.2;stroke-dasharray:8 3;stroke-linejoin:round}
.f-energy-1{fill:none;stroke:#a03c14;stroke-width:1.2;stroke-dasharray:10 2.5 1.5 2.5}
.f-energy-2{fill:none;stroke:#a03c14;stroke-width:.9;stroke-dasharray:4 2 1.2 2 1.2 2}
.f-mark-1{fill:#0b5a7d;stroke:#0b5a7d;stroke-width:.8}
.f-mark-2{fill:#fff;stroke:#0b5a7d;stroke-width:.9}
.f-dim{fill:none;stroke:#1c262b;stroke-width:.6}
.f-dim-end{fill:none;stroke:#1c262b;stroke-width:1.2}
.f-bar-dark{fill:#1c262b;stroke:#1c262b;stroke-width:.6}
.f-bar-light{fill:#fff;stroke:#1c262b;stroke-width:.6}
.f-required{fill:none;stroke:#a03c14;stroke-width:2}
.f-available{fill:none;stroke:#0b5a7d;stroke-width:2.2}
.f-expected{fill:none;stroke:#0b5a7d;stroke-width:1.1;stroke-dasharray:9 3}
.f-high{fill:none;stroke:#0b5a7d;stroke-width:1;stroke-dasharray:3.5 2.5}
.f-bound{fill:none;stroke:#59666c;stroke-width:1.1;stroke-dasharray:1.2 2.6;stroke-linecap:round}
.f-margin{fill:#cfe3ec;stroke:#cfe3ec;stroke-width:.5}
.f-shortfall{fill:#eec3b0;stroke:#eec3b0;stroke-width:.5}
.f-governing{fill:none;stroke:#1c262b;stroke-width:2.2}
.f-governing-end{fill:#fff;stroke:#1c262b;stroke-width:1.4}
.f-ratio{fill:none;stroke:#59666c;stroke-width:.8;stroke-dasharray:5 3}
.f-point-1{fill:#0b5a7d;stroke:#0b5a7d;stroke-width:1.1}
.f-point-2{fill:#a03c14;stroke:#a03c14;stroke-width:1.1}
.f-point-3{fill:#6b5a41;stroke:#6b5a41;stroke-width:1.1}
.f-point-4{fill:#1c262b;stroke:#1c262b;stroke-width:1.1}
.f-point-open{fill:#fff}
.f-cell{fill:none;stroke:#9aa5aa;stroke-width:.5}
.f-field{fill:#dcebdc;stroke:none}
.f-field-limit{fill:none;stroke:#1c262b;stroke-width:1.3}
.f-field-caution{fill:none;stroke:#59666c;stroke-width:.9;stroke-dasharray:2.5 2}
.f-path-in{fill:none;stroke:#0b5a7d;stroke-width:1.8;stroke-linejoin:round;stroke-linecap:round}
.f-path-out{fill:none;stroke:#a03c14;stroke-width:2.6;stroke-dasharray:.2 3.6;stroke-linecap:round}
.f-path-end{fill:#0b5a7d;stroke:#0b5a7d;stroke-width:1}
.f-path-end-out{fill:#fff;stroke:#a03c14;stroke-width:1.4}
.f-drop{fill:none;stroke:#1c262b;stroke-width:.7;stroke-dasharray:2 2}
)";
}

}  // namespace quell::output
