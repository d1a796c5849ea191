/// The mapping by which a table of claims or payments is read: saved, typed, or none needed.
#pragma once

#include "desk/billing/claim_files.hpp"
#include "exchange/mapped_table.hpp"

namespace sparewell::desk {

[[nodiscard]] std::string_view target_of(BillingFileKind kind);

/// Refuses, in one sentence, where none is named and the headings are not ours: with the mapping
/// that the headings suggest, and what it lacks.
[[nodiscard]] Expected<ColumnMapping> mapping_for(const store::Snapshot& snapshot,
                                                  const exchange::SheetTable& table,
                                                  const BillingFileRequest& request);

/// The columns that the headings of the table suggest, as they are typed: "code=Procedure;...". ""
/// where the file cannot be read, its headings are ours, or none of them is known.
[[nodiscard]] std::string suggested_columns(const BillingFileRequest& request);

/// Keeps it under its name, in place of an earlier one. True when something was written.
bool save_mapping(store::UnitOfWork& work, const ColumnMapping& mapping);

}  // namespace sparewell::desk
