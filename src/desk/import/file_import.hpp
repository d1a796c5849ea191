/// One file on its way into the database: what has been counted, refused and written so far.
#pragma once

#include <string>
#include <vector>

#include "desk/import/progress.hpp"
#include "desk/import/references.hpp"
#include "exchange/rejects_file.hpp"

namespace sparewell::desk {

class FileImport {
 public:
  FileImport(store::UnitOfWork& unit_of_work, const exchange::CsvFile& csv,
             const ImportOptions& import_options, Progress& import_progress)
      : work{unit_of_work},
        file{csv},
        options{import_options},
        progress{import_progress},
        references{unit_of_work} {
    report.file = csv.name();
    report.notes = csv.notes();
  }

  /// Counts a row as refused. `fields` is empty when they do not fit the header.
  void refuse(exchange::Reject reject);
  void refuse(const exchange::CsvRow& row, bool fits_header, exchange::Fault fault, int copy);
  /// Makes a supplier of whom only the name is known, unless there is one.
  void make_sure_of(const SupplierName& supplier, int line);
  /// Notes something doubtful about a row; after twenty of them only their number is kept.
  void doubt(int line, const std::string& sentence);
  /// Completes the notes.
  void finish();

  store::UnitOfWork& work;
  const exchange::CsvFile& file;
  const ImportOptions& options;
  Progress& progress;
  References references;
  FileReport report;
  std::vector<RefusedRow> refused;
  std::vector<exchange::Reject> rejects;
  bool wrote = false;  ///< something is to be committed
  bool cancelled = false;

 private:
  int doubts_ = 0;
};

}  // namespace sparewell::desk
