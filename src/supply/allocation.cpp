#include "supply/allocation.hpp"

#include <optional>

namespace sparewell::supply {

std::vector<int> best_changes(const std::vector<PlaceBalance>& places, double least_gain) {
  std::vector<int> changes(places.size(), 0);
  while (true) {
    std::optional<std::size_t> from;
    std::optional<std::size_t> to;
    double loss = 0;
    double gain = 0;
    for (std::size_t p = 0; p < places.size(); ++p) {
      const int position = places[p].position + changes[p];
      const double of_more = places[p].demand->more_than(position);
      if (!to || of_more > gain) {
        to = p;
        gain = of_more;
      }
      if (places[p].movable + changes[p] <= 0 || changes[p] > 0) continue;
      const double of_less = places[p].demand->more_than(position - 1);
      if (!from || of_less < loss) {
        from = p;
        loss = of_less;
      }
    }
    // Where both are one place nothing is to be gained: one less costs it more than one more
    // brings.
    if (!from || !to || *from == *to || gain - loss < least_gain) return changes;
    --changes[*from];
    ++changes[*to];
  }
}

}  // namespace sparewell::supply
