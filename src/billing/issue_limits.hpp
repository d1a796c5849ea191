/// What a payer will ask about a part, before it is handed out.
#pragma once

#include <optional>
#include <vector>

#include "billing/rule_book.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::billing {

/// A limit that the issue goes beyond.
struct LimitReached {
  PayerRule rule;
  int allowed = 0;
  int had = 0;  ///< with the pieces to be handed out
};

/// The part that this one takes the place of: the last of its side, billing code and kind that
/// ended within `days_to_replacement` and that nothing has replaced yet.
struct ReplacedPart {
  Unit unit;
  int days_in_use = 0;
  std::optional<PayerRule> early;         ///< where it ended within the rule's days
  bool unexplained = false;               ///< its end has no reason that tells anything
  std::optional<PayerRule> confirmation;  ///< where the payer may ask to confirm the need
  std::vector<PayerRule> papers;          ///< of every part, and of those that replace another
};

struct IssueLimits {
  std::vector<LimitReached> over;
  std::optional<ReplacedPart> replaced;
};

/// Nothing for items without a billing code. `clinic` needs patients, items and the patient's
/// units.
[[nodiscard]] IssueLimits check_before_issue(const Clinic& clinic, const ClinicIndex& index,
                                             const RuleBook& rules, const PatientRef& patient,
                                             Side side, const Item& item, int quantity, Date day);

}  // namespace sparewell::billing
