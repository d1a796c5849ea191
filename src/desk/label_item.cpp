#include "desk/label_item.hpp"

#include <algorithm>
#include <string_view>

#include <fmt/format.h>

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

constexpr std::size_t gtin_length = 14;

/// With zeros in front, as barcodes carry it; "" when the catalogue has no usable number.
std::string full_gtin(const Item& item) {
  if (item.gtin.empty() || item.gtin.size() > gtin_length) return {};
  return fmt::format("{:0>14}", item.gtin);
}

/// The middle digits, which are the same for the piece and its larger packages.
std::string_view reference_of(std::string_view gtin) {
  return gtin.substr(1, gtin_length - 2);
}

std::string letters_and_digits(std::string_view text) {
  std::string made;
  for (const char c : text) {
    if (c >= 'a' && c <= 'z') {
      made += static_cast<char>(c - 'a' + 'A');
    } else if ((c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')) {
      made += c;
    }
  }
  return made;
}

template <class Answers>
std::vector<const Item*> those(const std::vector<Item>& catalogue, Answers answers) {
  std::vector<const Item*> made;
  for (const Item& item : catalogue) {
    if (answers(item)) made.push_back(&item);
  }
  return made;
}

Expected<Item> only_one(const std::vector<const Item*>& items, const std::string& number) {
  if (items.size() == 1) return *items.front();
  if (items.empty()) {
    return refuse(
        say("No item of the catalogue has the number {} of the label; name the item, and "
            "write the number into the catalogue.",
            number));
  }
  return refuse(
      say("{} and {} both have the number {} of the label; name the item, and "
          "correct the catalogue.",
          items[0]->code.text, items[1]->code.text, number));
}

}  // namespace

Expected<Item> item_of_label(const exchange::Label& label, const std::vector<Item>& catalogue) {
  if (!label.names_item()) {
    return refuse(say(
        "The label does not say what the part is; scan its other barcode too, or name the item."));
  }
  if (label.gtin.empty()) {
    const auto number = letters_and_digits(label.product);
    return only_one(
        those(catalogue,
              [&](const Item& item) { return letters_and_digits(item.supplier_item) == number; }),
        label.product);
  }
  const auto same =
      those(catalogue, [&](const Item& item) { return full_gtin(item) == label.gtin; });
  if (!same.empty()) return only_one(same, label.gtin);
  const auto packed = those(catalogue, [&](const Item& item) {
    const auto gtin = full_gtin(item);
    return !gtin.empty() && reference_of(gtin) == reference_of(label.gtin);
  });
  if (packed.empty()) return only_one(packed, label.gtin);
  return refuse(
      say("{} is the number of another package of {}; scan a single piece, or "
          "name the item and count the pieces.",
          label.gtin, packed.front()->code.text));
}

}  // namespace sparewell::desk
