/// Places where stock lies, and what lying there means.
#pragma once

#include <span>
#include <string>
#include <string_view>

#include "clinic/words.hpp"

namespace sparewell {

/// Only pieces in a store may be handed out and count as on hand.
enum class PlaceSort {
  store,       ///< a branch or a shelf
  quarantine,  ///< held back: may not be handed out
  in_transit,  ///< on the way between two places
  on_loan,     ///< with patients on trial
  at_supplier  ///< sent back, the credit is due
};
template <>
std::span<const std::string_view> words<PlaceSort>();

struct Place {
  std::string name;  ///< unique in the clinic
  PlaceSort sort = PlaceSort::store;

  friend bool operator==(const Place&, const Place&) = default;
};

/// The recorded sort. A place known from movements alone is a quarantine when its name says so and
/// a store otherwise.
[[nodiscard]] PlaceSort sort_of_place(std::span<const Place> places, std::string_view name);

}  // namespace sparewell
