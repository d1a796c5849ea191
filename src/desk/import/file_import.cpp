#include "desk/import/file_import.hpp"

#include "clinic/say.hpp"

namespace sparewell::desk {
namespace {

constexpr int most_doubts = 20;

}  // namespace

void FileImport::refuse(exchange::Reject reject) {
  ++report.refused;
  refused.push_back({report.file, reject.line, reject.fault.column, reject.fault.reason});
  rejects.push_back(std::move(reject));
}

void FileImport::refuse(const exchange::CsvRow& row, bool fits_header, exchange::Fault fault,
                        int copy) {
  exchange::Reject reject;
  reject.line = row.line;
  reject.fault = std::move(fault);
  reject.copy = copy;
  // Known from the file that a row was refused from first.
  reject.alike = exchange::cell_at(row, file.position_of(exchange::rejected_alike_column));
  if (fits_header) {
    reject.fields.assign(row.fields.begin(), row.fields.end());
  } else {
    reject.text = row.text;
  }
  refuse(std::move(reject));
}

void FileImport::make_sure_of(const SupplierName& supplier, int line) {
  if (supplier.empty() || references.has(supplier)) return;
  Supplier bare;
  bare.name = supplier;
  bare.currency = work.settings().currency;
  work.put(bare);
  wrote = true;
  references.add(bare);
  report.notes.push_back(
      say("Line {}: the supplier '{}' was not known; it was made with its name alone.", line,
          exchange::excerpt(supplier.text)));
}

void FileImport::doubt(int line, const std::string& sentence) {
  if (sentence.empty()) return;
  if (++doubts_ <= most_doubts) report.notes.push_back(say("Line {}: {}.", line, sentence));
}

void FileImport::finish() {
  if (doubts_ > most_doubts) {
    report.notes.push_back(
        say("{} more rows are doubtful in the same way.", doubts_ - most_doubts));
  }
}

}  // namespace sparewell::desk
