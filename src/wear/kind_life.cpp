#include "wear/kind_life.hpp"

#include <iterator>
#include <stdexcept>

#include <fmt/format.h>

namespace sparewell::wear {
namespace {

std::map<Material, double>::const_iterator find(const KindLife& life, Material material) {
  const auto found = life.scale.find(material);
  if (found != life.scale.end()) return found;
  throw std::out_of_range{
      fmt::format("No life was fitted for {} of {}.", word(life.kind), word(material))};
}

}  // namespace

double scale_days(const KindLife& life, Material material) {
  return find(life, material)->second;
}

double scale_days(const KindLife& life, const Item& item) {
  const auto own = life.item_scale.find(item.code);
  return own != life.item_scale.end() ? own->second : scale_days(life, item.material);
}

Eigen::Index scale_column(const KindLife& life, const Item& item) {
  const auto own = life.item_scale.find(item.code);
  if (own != life.item_scale.end()) {
    return std::ssize(life.scale) + std::distance(life.item_scale.begin(), own);
  }
  return std::distance(life.scale.begin(), find(life, item.material));
}

}  // namespace sparewell::wear
