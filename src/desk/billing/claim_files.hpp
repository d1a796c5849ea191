/// Reads files of claims and of payments, X12 or tables, into the clinic file.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "clinic/column_mapping.hpp"
#include "desk/import_folder.hpp"
#include "exchange/x12/segments.hpp"
#include "store/port.hpp"

namespace sparewell::desk {

enum class BillingFileKind { claims, remittance };

struct BillingFileRequest {
  std::filesystem::path file;
  BillingFileKind kind = BillingFileKind::claims;
  bool dry_run = false;  ///< look at everything, write nothing

  // Of tables alone:
  std::string sheet;               ///< of a workbook; "" for the first
  char separator = ',';            ///< of CSV
  std::string mapping;             ///< the name of a saved mapping
  std::string columns;             ///< "service_date=Date of service; ...", instead of a saved one
  std::string date_pattern;        ///< of `columns`; "" for ISO 8601
  std::string decimal_sign = ".";  ///< of `columns`
  std::string save_as;             ///< the name under which `columns` is kept
};

struct BillingFileOutcome {
  std::string file;
  BillingFileKind kind = BillingFileKind::claims;
  bool is_x12 = false;
  bool written = false;  ///< false after a dry run
  int claims = 0;        ///< claims, or payments
  int added = 0;         ///< lines
  int changed = 0;
  int unchanged = 0;
  int without_patient = 0;  ///< lines of payments whose patient is not known

  // What the file states = what was kept + what was refused, else it does not tie out.
  Money stated;
  Money kept;
  Money refused_sum;  ///< of refused lines, as far as their amounts could be read
  [[nodiscard]] bool ties_out() const { return stated.minor == kept.minor + refused_sum.minor; }

  std::vector<RefusedRow> refused;       ///< `line` is the segment in an X12 file
  std::vector<exchange::Unread> unread;  ///< segments that were not understood
  std::vector<std::string> differences;  ///< sums and counts that do not tie out, a sentence each
  std::vector<std::string> notes;
  std::filesystem::path rejects_folder;  ///< "" when nothing was refused or written
  std::optional<ColumnMapping> mapping;  ///< by which a table was read

  /// Nothing was refused, all was understood, and it ties out.
  [[nodiscard]] bool clean() const {
    return refused.empty() && unread.empty() && differences.empty() && ties_out();
  }
};

/// Recognises the file by its beginning: X12, or a table, which needs a mapping unless its headings
/// are ours. Everything is written in one unit of work; reading a file twice changes nothing.
/// Claim lines that cannot be read, or whose patient is not known, go to a folder "rejects" beside
/// the file, in the form of claims.csv; rows of payments likewise, under our names.
/// Refuses in one sentence: a file that cannot be read, of another kind, or whose columns no
/// mapping names, with the mapping that its headings suggest; a mapping that does not exist or fit.
/// Throws store::StoreFailure, and then nothing is written.
[[nodiscard]] Expected<BillingFileOutcome> read_billing_file(store::Store& store,
                                                             const BillingFileRequest& request,
                                                             const store::Author& author);

}  // namespace sparewell::desk
