/// The words for what the checks before an issue found.
#pragma once

#include <vector>

#include "care/attachment.hpp"
#include "care/chain.hpp"
#include "care/fit.hpp"
#include "care/part_state.hpp"
#include "care/sensitivity.hpp"
#include "desk/issue_check.hpp"

namespace sparewell::desk {

/// "locking liner", "liner with seal", "valve".
[[nodiscard]] std::string function_words(care::Function function);

[[nodiscard]] IssueFinding sensitivity_finding(const care::SensitivityVerdict& verdict,
                                               const Item& item);
[[nodiscard]] IssueFinding fit_finding(const care::FitCheck& check, const Item& item, Side side);
[[nodiscard]] IssueFinding attachment_finding(const care::AttachmentFinding& found,
                                              const Item& item, Suspension suspension);
/// A function that nothing worn on that side does.
[[nodiscard]] IssueFinding missing_finding(care::Function function, Suspension suspension,
                                           Side side);
/// Says too when nothing is missing.
[[nodiscard]] IssueFinding chain_finding(const std::vector<care::Function>& missing,
                                         Suspension suspension);
/// `expected_days` is what the piece's use-by date was compared with; `own` when it is this
/// patient's forecast.
[[nodiscard]] IssueFinding piece_finding(const care::PieceFinding& found, Date day,
                                         std::optional<int> expected_days, bool own);
[[nodiscard]] IssueFinding patient_finding(care::PatientFault fault, Side side, const Item& item);

/// All findings, what is to be taken from where, and the caution: a line each.
[[nodiscard]] std::string issue_text(const IssueCheck& check);

}  // namespace sparewell::desk
