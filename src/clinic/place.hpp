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
  /// In transit: the place where the pieces go; at supplier: the supplier; "" otherwise.
  std::string leads_to;

  friend bool operator==(const Place&, const Place&) = default;
};

/// The recorded sort. A place known from movements alone is a quarantine when its name says so and
/// a store otherwise.
[[nodiscard]] PlaceSort sort_of_place(std::span<const Place> places, std::string_view name);

/// The places that the program keeps itself: "in transit to B", "on loan", "at supplier S".
[[nodiscard]] Place transit_place(const std::string& to);
[[nodiscard]] Place loan_place();
[[nodiscard]] Place supplier_place(const std::string& supplier);
/// A place's name for screens, never for files: names that the program gives are in its language.
[[nodiscard]] std::string shown_place(std::string_view name);
/// True of a name that the program uses for such a place, recorded or not.
[[nodiscard]] bool is_name_of_program(std::string_view name);
/// True of these: their pieces belong to a transfer, a loan or a return that has to be settled.
[[nodiscard]] bool is_kept_by_program(const Place& place);

}  // namespace sparewell
