/// Pieces set one after another, in as many lines as the width needs.
#pragma once

#include <vector>

namespace sparewell::desk {

struct FlowPlace {
  double x = 0;
  int line = 0;  ///< from 0
};

/// Where pieces of these widths stand. A piece wider than `available` has a line of its own.
[[nodiscard]] std::vector<FlowPlace> flow(const std::vector<double>& widths, double available);

}  // namespace sparewell::desk
