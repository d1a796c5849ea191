/// How long a part may be used at all: its shelf life runs in a drawer too, where it does not age.
#pragma once

#include <map>
#include <optional>
#include <utility>

#include "clinic/clinic.hpp"

namespace sparewell::wear {

struct UseBy {
  Date day;  ///< the last day on which it may be used
  /// The lot's date is not on record, and this is the latest that it can be: the item keeps so long
  /// after manufacture, which was before its issue.
  bool at_latest = false;

  friend bool operator==(const UseBy&, const UseBy&) = default;
};

/// The use-by dates of the units of one clinic, which must outlive it.
class UseBys {
 public:
  explicit UseBys(const Clinic& clinic);

  /// That of the unit's lot, the earliest where stock of the lot has several; otherwise from the
  /// item's shelf life. Nothing when neither is known, which does not mean that it keeps for ever.
  [[nodiscard]] std::optional<UseBy> of(const Unit& unit, const Item& item) const;

 private:
  std::map<std::pair<ItemCode, std::string>, Date> lots_;
};

}  // namespace sparewell::wear
