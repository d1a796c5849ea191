/// Whether a part that is billed under one code may have been billed under another.
#pragma once

#include <string>
#include <unordered_map>

#include "billing/code_table.hpp"
#include "billing/rule_book.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::billing {

enum class Likeness {
  same,
  initial,    ///< the code of the first part of its sort, whose later ones bear the part's code
  same_kind,  ///< items of the same kind bear it
  unknown,    ///< it does not hold on that day and no item bears it: perhaps mistyped
  none
};

/// Refers to what it is made from.
class CodeLikeness {
 public:
  CodeLikeness(const Clinic& clinic, const CodeTable& codes, const RuleBook& rules);

  [[nodiscard]] Likeness of(const std::string& of_part, Kind kind, const ClaimLine& line) const;

 private:
  const CodeTable* codes_;
  const RuleBook* rules_;
  std::unordered_map<std::string, unsigned> kinds_;  ///< of the items that bear a code, as bits
};

}  // namespace sparewell::billing
