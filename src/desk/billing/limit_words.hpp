/// The words for what a payer will ask about a part, before it is handed out.
#pragma once

#include <vector>

#include "billing/issue_limits.hpp"
#include "desk/issue_check.hpp"

namespace sparewell::desk {

/// Key "over_limit" for each limit that is gone beyond; "early_replacement" where the part before
/// was in use for a shorter time than the payer expects: ask first where its end has no reason,
/// else a note; "replacement", a note, where the payer may ask to confirm the need. Both name the
/// papers to keep.
[[nodiscard]] std::vector<IssueFinding> limit_findings(const billing::IssueLimits& limits,
                                                       const Item& item, Side side,
                                                       const std::string& payer);

}  // namespace sparewell::desk
