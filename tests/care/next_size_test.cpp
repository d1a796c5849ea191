#include "care/next_size.hpp"

#include <doctest/doctest.h>

namespace next_size_test {

using namespace sparewell;

namespace {

Item liner(const char* code, double from, double to, Material material = Material::silicone) {
  Item item;
  item.code = {code};
  item.kind = Kind::liner;
  item.material = material;
  item.size_min_cm = from;
  item.size_max_cm = to;
  item.size_at_cm = 4;
  return item;
}

}  // namespace

TEST_CASE("The size that suits is of the same make, and the closest around the limb") {
  const std::vector<Item> catalogue{liner("A-22", 22, 24), liner("A-24", 24, 26),
                                    liner("A-26", 26, 28), liner("A-wide", 20, 30),
                                    liner("U-23", 22, 24, Material::urethane)};
  const Item& worn = catalogue[2];
  CHECK(care::size_for(worn, 23, catalogue) == &catalogue[0]);
  CHECK(care::size_for(worn, 25, catalogue) == &catalogue[1]);
  // On the border of two sizes the item code decides.
  CHECK(care::size_for(worn, 24, catalogue) == &catalogue[0]);
  CHECK(care::size_for(worn, 29, catalogue) == &catalogue[3]);
  CHECK(care::size_for(worn, 40, catalogue) == nullptr);
  CHECK(care::size_for(catalogue[4], 25, catalogue) == nullptr);
  auto described = catalogue;
  described[0].description = "Liner with a soft cuff, size 22";
  described[0].size_label = "22";
  CHECK(care::size_for(described[2], 23, described) == &described[3]);
}

}  // namespace next_size_test
