#include "desk/import_folder.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <stdexcept>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/import/merge_rows.hpp"
#include "desk/import/newly_against.hpp"
#include "desk/import/rejects_folder.hpp"
#include "desk/import/stock_count.hpp"
#include "desk/import_trial.hpp"
#include "desk/moved_visits.hpp"
#include "exchange/csv_text.hpp"
#include "exchange/folder_files.hpp"

namespace sparewell::desk {
namespace {

namespace fs = std::filesystem;

class FolderImport {
 public:
  FolderImport(store::Store& store, fs::path folder, const store::Author& author,
               const ImportOptions& options)
      : store_{store},
        folder_{std::move(folder)},
        author_{author},
        options_{options},
        files_{find_files(folder_, report_.notes)},
        progress_{options, total_size(files_)} {}

  ImportReport run(bool keep_rejects) {
    std::optional<NewlyAgainst> newly;
    if (brings_any_of({"catalogue.csv", "sensitivities.csv", "issued.csv"})) {
      newly.emplace(store_, options_.today);
    }
    merge_all();
    if (newly) {
      if (auto words = newly->words()) report_.notes.push_back(std::move(*words));
    }
    if (keep_rejects) write_rejects();
    return std::move(report_);
  }

 private:
  using Files = std::map<std::string, fs::path>;

  [[nodiscard]] bool brings_any_of(std::initializer_list<const char*> names) const {
    return std::ranges::any_of(names, [&](const char* name) { return files_.contains(name); });
  }

  void merge_all() {
    // In the order in which rows refer to each other.
    merge(exchange::suppliers_table());
    merge(exchange::catalogue_table());
    merge_patients();
    merge(exchange::prostheses_table());
    merge(exchange::usage_table());
    merge(exchange::sensitivities_table());
    merge(exchange::measurements_table());
    merge(exchange::reactions_table());
    merge(exchange::issued_table());
    take_in(exchange::stock_table(), import_stock_count);
    merge(exchange::orders_table());
    merge(exchange::claims_table());
    merge(exchange::invoices_table());
    merge(exchange::codes_table());
    merge(exchange::payer_rules_table());
    merge(exchange::papers_table());
  }

  static Files find_files(const fs::path& folder, std::vector<std::string>& notes);
  static double total_size(const Files& files);

  template <class Record>
  void merge(const exchange::Table<Record>& table) {
    take_in(table, [&](FileImport& file) { merge_file(file, table); });
  }

  /// Bookings go along with visits that are moved.
  void merge_patients() {
    const auto table = exchange::patients_table();
    take_in(table, [&](FileImport& file) {
      const auto booked = booked_for_visits(file.work);
      merge_file(file, table);
      if (file.cancelled) return;
      const auto told = follow_visits(file.work, booked, options_.today);
      file.report.notes.insert(file.report.notes.end(), told.begin(), told.end());
    });
  }

  template <class Record, class Take>
  void take_in(const exchange::Table<Record>& table, Take take) {
    const auto found = files_.find(table.file);
    if (found == files_.end() || report_.cancelled) return;
    auto bytes = exchange::read_bytes(found->second);
    if (!bytes) return refuse_file(table.file, bytes.error());
    const auto size = static_cast<double>(bytes->size());
    progress_.begin(table.file, size);
    const auto file = exchange::CsvFile::open(table.file, std::move(*bytes), options_.format,
                                              exchange::column_specs(table));
    if (!file) return refuse_file(table.file, file.error());
    write(*file, take);
  }

  /// One transaction; nothing of it stays when it is cancelled or throws.
  template <class Take>
  void write(const exchange::CsvFile& file, Take take) {
    const auto work = store_.begin_write(
        {author_.who, author_.why.empty() ? fmt::format("import of {}", file.name())
                                          : fmt::format("{}, {}", author_.why, file.name())});
    FileImport run{*work, file, options_, progress_};
    take(run);
    if (run.cancelled) {
      report_.cancelled = true;
      report_.notes.push_back(say(
          "The import was stopped: nothing of {} was kept, files before it were.", file.name()));
      return;
    }
    run.finish();
    if (run.wrote) work->commit();
    if (!run.rejects.empty()) rejects_[file.name()] = exchange::rejects_text(file, run.rejects);
    report_.refused.insert(report_.refused.end(), run.refused.begin(), run.refused.end());
    report_.files.push_back(std::move(run.report));
  }

  void refuse_file(const std::string& name, const Refusal& refusal) {
    FileReport file;
    file.file = name;
    file.refusal = refusal.sentence;
    report_.files.push_back(std::move(file));
  }

  void write_rejects() {
    if (rejects_.empty()) return;
    const auto wanted =
        options_.rejects_folder.empty() ? folder_ / "rejects" : options_.rejects_folder;
    const auto written = write_rejects_folder(wanted, rejects_);
    if (written) {
      report_.rejects_folder = *written;
    } else {
      report_.notes.push_back(written.error().sentence);
    }
  }

  store::Store& store_;
  fs::path folder_;
  const store::Author& author_;
  const ImportOptions& options_;
  ImportReport report_;
  Files files_;
  Progress progress_;
  std::map<std::string, std::string> rejects_;
};

FolderImport::Files FolderImport::find_files(const fs::path& folder,
                                             std::vector<std::string>& notes) {
  static constexpr std::array<std::string_view, 16> known{
      "suppliers.csv", "catalogue.csv",     "patients.csv",     "prostheses.csv",
      "usage.csv",     "sensitivities.csv", "measurements.csv", "reactions.csv",
      "issued.csv",    "stock.csv",         "orders.csv",       "claims.csv",
      "invoices.csv",  "codes.csv",         "payer_rules.csv",  "papers.csv"};
  std::vector<fs::path> there;
  for (const auto& entry : fs::directory_iterator{folder}) {
    if (!entry.is_directory()) there.push_back(entry.path());
  }
  std::ranges::sort(there);
  Files files;
  for (const auto& path : there) {
    const auto name = path.filename().string();
    const auto lower = exchange::lower_case(name);
    if (name.starts_with('.')) continue;
    if (std::ranges::find(known, lower) == known.end()) {
      notes.push_back(say("The file {} is not one of a clinic folder and was left out.", name));
    } else if (const auto [first, is_new] = files.emplace(lower, path); !is_new) {
      notes.push_back(say("The file {} was left out, because {} is there as well.", name,
                          first->second.filename().string()));
    }
  }
  return files;
}

double FolderImport::total_size(const Files& files) {
  double total = 0;
  for (const auto& [name, path] : files) {
    std::error_code ignored;
    const auto size = fs::file_size(path, ignored);
    if (!ignored) total += static_cast<double>(size);
  }
  return total;
}

}  // namespace

bool ImportReport::clean() const {
  return refused.empty() && !cancelled &&
         std::ranges::all_of(files, [](const FileReport& file) { return file.refusal.empty(); });
}

namespace {

void check_folder(const fs::path& folder) {
  std::error_code error;
  if (!fs::is_directory(folder, error)) {
    throw std::runtime_error(
        say("There is no folder {}; name the folder that holds the clinic's CSV files.",
            folder.string()));
  }
}

}  // namespace

ImportReport import_folder(store::Store& store, const std::filesystem::path& folder,
                           const store::Author& author, const ImportOptions& options) {
  check_folder(folder);
  return FolderImport{store, folder, author, options}.run(true);
}

ImportReport import_without_rejects(store::Store& store, const std::filesystem::path& folder,
                                    const store::Author& author, const ImportOptions& options) {
  check_folder(folder);
  return FolderImport{store, folder, author, options}.run(false);
}

}  // namespace sparewell::desk
