/// What reading a file of claims or payments did, in words.
#pragma once

#include <string>
#include <vector>

#include "desk/billing/claim_files.hpp"

namespace sparewell::desk {

/// Sentences: what was taken, whether it ties out, how a table was read, and notes.
[[nodiscard]] std::vector<std::string> claim_file_lines(const BillingFileOutcome& outcome);

/// What was refused or not understood and what does not tie out, each at most `most` of its kind
/// and then how many more there are.
[[nodiscard]] std::vector<std::string> claim_file_problems(const BillingFileOutcome& outcome,
                                                           std::size_t most = 20);

}  // namespace sparewell::desk
