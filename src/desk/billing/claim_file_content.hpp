/// What a file of claims or payments holds, before it meets what is stored.
#pragma once

#include "desk/billing/claim_files.hpp"
#include "exchange/claim_table.hpp"

namespace sparewell::desk {

struct FileContent {
  Currency currency;
  exchange::ClaimsRead claims;
  exchange::PaymentsRead payments;
  bool holds_rejects = false;  ///< a table of rows that were refused before
};

/// Reads request.file; what the outcome says of the file itself is filled in. Refuses as
/// read_billing_file does.
[[nodiscard]] Expected<FileContent> read_file_content(const store::Snapshot& snapshot,
                                                      const BillingFileRequest& request,
                                                      BillingFileOutcome& outcome);

}  // namespace sparewell::desk
