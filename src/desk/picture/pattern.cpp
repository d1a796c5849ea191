#include "desk/picture/pattern.hpp"

#include <algorithm>
#include <cmath>

namespace sparewell::picture {
namespace {

/// The places along the line x*across + y*down = at, as x, where it enters and leaves the outline.
/// Half-open edges, so that a corner counts once.
std::vector<Spot> crossings(const std::vector<Spot>& outline, double across, double down,
                            double at) {
  std::vector<Spot> made;
  const auto value = [&](const Spot& spot) { return across * spot.x + down * spot.y; };
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot& a = outline[i];
    const Spot& b = outline[(i + 1) % outline.size()];
    const double from = value(a);
    const double to = value(b);
    if ((from <= at) == (to <= at)) continue;
    const double share = (at - from) / (to - from);
    made.push_back({a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)});
  }
  std::ranges::sort(made, {}, &Spot::x);
  return made;
}

}  // namespace

std::vector<std::pair<Spot, Spot>> hatching(const std::vector<Spot>& outline, double apart) {
  std::vector<std::pair<Spot, Spot>> made;
  if (outline.size() < 3 || !(apart > 0)) return made;
  const auto [least, most] =
      std::ranges::minmax(outline, {}, [](const Spot& spot) { return spot.x + spot.y; });
  const double last = most.x + most.y;
  for (double at = apart * std::ceil((least.x + least.y) / apart); at < last; at += apart) {
    const auto ends = crossings(outline, 1, 1, at);
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2) made.emplace_back(ends[i], ends[i + 1]);
  }
  return made;
}

std::vector<Spot> dots_within(const std::vector<Spot>& outline, double apart) {
  std::vector<Spot> made;
  if (outline.size() < 3 || !(apart > 0)) return made;
  const auto [least, most] = std::ranges::minmax(outline, {}, &Spot::y);
  const double last = most.y;
  for (auto row = static_cast<long long>(std::ceil(least.y / apart));
       static_cast<double>(row) * apart < last; ++row) {
    const double y = static_cast<double>(row) * apart;
    const double shift = row % 2 == 0 ? 0 : apart / 2;
    const auto ends = crossings(outline, 0, 1, y);
    for (std::size_t i = 0; i + 1 < ends.size(); i += 2) {
      double x = shift + apart * std::ceil((ends[i].x - shift) / apart);
      for (; x < ends[i + 1].x; x += apart) made.push_back({x, y});
    }
  }
  return made;
}

std::vector<Spot> corners(const Area& area) {
  return {{area.left, area.top},
          {area.right, area.top},
          {area.right, area.bottom},
          {area.left, area.bottom}};
}

}  // namespace sparewell::picture
