#include "names.hpp"

#include <array>
#include <string_view>

namespace sparewell::sample {
namespace {

constexpr std::array<std::string_view, 32> given{
    "Ambrel",   "Bintle",  "Corvane",  "Dwindra",  "Elmery",    "Fenwisp",  "Gribbel",
    "Hazeldy",  "Ilvony",  "Juniptra", "Kestra",   "Lumbrin",   "Mirrowen", "Nettie-Oak",
    "Ombrelle", "Pellamy", "Quindle",  "Rowstan",  "Sorrelia",  "Tilvo",    "Umbriel-Jo",
    "Vesperly", "Wennick", "Xandrel",  "Yarrowin", "Zephyrine", "Mølle",    "Brindle",
    "Çilantra", "Dovetta", "Ferndal",  "Łuminka"};

constexpr std::array<std::string_view, 24> family_first{
    "Quill",   "Moss",   "Pebble", "Thimble", "Lantern", "Bramble",  "Cloud",  "Tinder",
    "Marrow",  "Teasel", "Puddle", "Acorn",   "Drizzle", "Saffron",  "Button", "Kettle",
    "Whisker", "Ember",  "Bottle", "Cobble",  "Dapple",  "Gossamer", "Nutmeg", "Velvet"};

constexpr std::array<std::string_view, 20> family_second{
    "feather", "wick",    "snout",  "barrow", "thorpe-moon", "whistle", "gander",
    "spindle", "button",  "hollow", "mantle", "twig",        "fiddle",  "otter",
    "crumb",   "sparrow", "bonnet", "kipper", "toggle",      "dimple"};

}  // namespace

std::string invented_given_name(Random& random) {
  return std::string{random.pick(given)};
}

std::string invented_family_name(Random& random) {
  return std::string{random.pick(family_first)} + std::string{random.pick(family_second)};
}

}  // namespace sparewell::sample
