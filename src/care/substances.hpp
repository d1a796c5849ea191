/// Which substances are kinds of others, are other names for them, or may contain them.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/substance.hpp"

namespace sparewell::care {

using Relation = SubstanceRelation;

/// A way from one substance to another, for a person to follow.
struct SubstancePath {
  std::vector<std::string> names;      ///< from the first to the last; never empty
  std::vector<Relation> relations;     ///< one less than `names`
  [[nodiscard]] bool certain() const;  ///< no step says only "may contain"
};

/// Names are compared without regard to letter case and to space, hyphen or underscore.
class Substances {
 public:
  Substances() = default;
  explicit Substances(std::span<const SubstanceRow> rows);

  /// True when the table has the name at all; what it does not have can only be compared by name.
  [[nodiscard]] bool knows(std::string_view name) const;
  /// The shortest way from `from` to `to`, one without "may contain" before any other; none or one.
  /// Equal names give a path of one name, known to the table or not.
  [[nodiscard]] std::vector<SubstancePath> path(std::string_view from, std::string_view to) const;
  /// Every group that the substance belongs to, itself and its other names included, nearest first.
  [[nodiscard]] std::vector<std::string> groups_of(std::string_view name) const;
  /// What the substance may contain, and the groups of that; nearest first. What it belongs to for
  /// certain is not among them.
  [[nodiscard]] std::vector<std::string> may_be_in(std::string_view name) const;
  /// The name that the table prefers among the other names of one substance; the name itself for
  /// one that is not in it.
  [[nodiscard]] std::string usual_name(std::string_view name) const;

 private:
  struct Step {
    std::string to;
    Relation relation;
  };
  /// Names that are reached from `from`, it included, nearest first.
  [[nodiscard]] std::vector<std::string> reached(std::string from, bool with_residues) const;

  std::map<std::string, std::vector<Step>> steps_;
  std::map<std::string, std::string> usual_;  ///< the other name of each "same as"
};

}  // namespace sparewell::care
