/// What substances are to each other: kinds of others, other names, what they may contain.
#pragma once

#include <optional>
#include <string>

#include "clinic/date.hpp"
#include "clinic/words.hpp"

namespace sparewell {

enum class SubstanceRelation {
  is_a,        ///< every mineral oil is a petrolatum-type hydrocarbon
  same_as,     ///< another name
  may_contain  ///< residues and additives that makers do not always name
};

/// One row of resources/substances/relations.csv, or one that the clinic added to it.
struct SubstanceRow {
  std::string substance;
  SubstanceRelation relation = SubstanceRelation::is_a;
  std::string other;
  std::string source;                  ///< where it is known from; never empty
  std::optional<Date> withdrawn_on{};  ///< from that day on it is no longer held for true

  friend bool operator==(const SubstanceRow&, const SubstanceRow&) = default;
};

}  // namespace sparewell
