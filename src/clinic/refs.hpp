/// The clinic's own identifiers as distinct types, so that an item code is never passed where a
/// patient reference is meant. Each is the text that people write on paper and in their files.
#pragma once

#include <compare>
#include <functional>
#include <string>

namespace sparewell {

template <class Tag>
struct Ref {
  std::string text;

  [[nodiscard]] bool empty() const { return text.empty(); }
  friend auto operator<=>(const Ref&, const Ref&) = default;
};

/// The clinic's reference for a patient; never a name.
using PatientRef = Ref<struct PatientRefTag>;
/// The clinic's code for one catalogue line: a maker's part in one size.
using ItemCode = Ref<struct ItemCodeTag>;
/// A supplier's name as the clinic writes it.
using SupplierName = Ref<struct SupplierNameTag>;

}  // namespace sparewell

template <class Tag>
struct std::hash<sparewell::Ref<Tag>> {
  std::size_t operator()(const sparewell::Ref<Tag>& ref) const noexcept {
    return std::hash<std::string>{}(ref.text);
  }
};
