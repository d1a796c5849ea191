#include "desk/flow.hpp"

namespace sparewell::desk {

std::vector<FlowPlace> flow(const std::vector<double>& widths, double available) {
  std::vector<FlowPlace> places;
  places.reserve(widths.size());
  FlowPlace next;
  for (const double width : widths) {
    if (next.x > 0 && next.x + width > available) next = {0, next.line + 1};
    places.push_back(next);
    next.x += width;
  }
  return places;
}

}  // namespace sparewell::desk
