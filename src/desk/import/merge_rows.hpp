/// Brings the rows of one file together with what is stored: adds, changes, or leaves.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>

#include "clinic/say.hpp"
#include "desk/import/alike_rows.hpp"
#include "desk/import/file_import.hpp"
#include "desk/import/natural_keys.hpp"

namespace sparewell::desk {

/// How the refusal of a second row with the same key begins in English.
inline constexpr std::string_view same_key_start = "names the same record as line ";
/// Ends it in any other language, so that it is known again whatever the program speaks then.
inline constexpr std::string_view same_key_mark = " [same_key]";

[[nodiscard]] inline std::string same_key_reason(std::string words) {
  if (!words.starts_with(same_key_start)) words += same_key_mark;
  return words;
}

/// The line that such a refusal names; nothing for other reasons.
[[nodiscard]] inline std::optional<std::string_view> line_of_same_key(std::string_view reason) {
  if (reason.starts_with(same_key_start)) {
    reason.remove_prefix(same_key_start.size());
    return reason.substr(0, reason.find_first_of(",;"));
  }
  if (reason.find(same_key_mark) == std::string_view::npos) return std::nullopt;
  reason.remove_prefix(std::min(reason.find_first_of("0123456789"), reason.size()));
  return reason.substr(0, reason.find_first_not_of("0123456789"));
}

template <class Record>
class RowMerge {
 public:
  RowMerge(FileImport& run, const exchange::Table<Record>& table)
      : run_{run}, table_{table}, alike_{run.file, key_columns(table)} {
    lines_.reserve(run.file.size() / 64);
    auto rows = run.work.all<Record>();
    stored_.reserve(rows.size());
    for (auto& row : rows) {
      auto key = full_key(row.record, natural_key(row.record));
      stored_.emplace(std::move(key), std::move(row));
    }
  }

  /// Takes or refuses one row.
  void take(exchange::ParsedRow<Record>& row) {
    ++run_.report.rows;
    std::string key;
    if (row.key_known) {
      key = natural_key(row.record);
      number(row, key);
      key = full_key(row.record, std::move(key));
    }
    auto fault = std::move(row.fault);
    if (row.key_known) {
      auto twin = note_key(key, row.source.line);
      if (!fault) fault = std::move(twin);
    }
    if (!fault) fault = unknown_reference(row.record, run_.references);
    const auto stored = stored_.find(key);
    if (!fault && stored != stored_.end()) {
      keep_absent_columns(row.record, stored->second.record);
      fault = unresolved_twin(row, stored->second.record);
    }
    if (fault) {
      if (table_.copies && row.wrong_key_cells == 1 && row.copy == 0) {
        alike_.want(row.source, table_.columns[row.wrong_key_column].name, run_.rejects.size());
      }
      run_.refuse(row.source, row.fits_header, std::move(*fault), row.copy);
      return;
    }
    if (table_.doubt) run_.doubt(row.source.line, table_.doubt(row.record));
    run_.make_sure_of(supplier_of(row.record), row.source.line);
    write(row.record, stored);
  }

  /// Notes how many rows are alike to those that were refused for one cell of their key. To be
  /// called after the last row.
  void count_alike(const exchange::TableReader<Record>& reader) {
    if (run_.file.holds_rejects() || !alike_.any_wanted()) return;
    reader.read([&](const exchange::ParsedRow<Record>& row) {
      if (row.key_known) alike_.count(row.source);
      return true;
    });
    alike_.fill(run_.rejects);
  }

 private:
  using Stored = std::unordered_map<std::string, store::Row<Record>>;

  static std::string full_key(const Record& record, std::string key) {
    if constexpr (requires { record.copy; }) key += std::to_string(record.copy);
    return key;
  }

  /// Numbers alike rows without a number of their own in the order of the file.
  void number(exchange::ParsedRow<Record>& row, const std::string& key) {
    if constexpr (requires { row.record.copy; }) {
      if (row.copy == 0) {
        int& last = numbered_[key];
        if (last == 0 && run_.file.holds_rejects()) last = alike_.before(row.source);
        do {
          row.copy = ++last;
        } while (lines_.contains(key + std::to_string(row.copy)));
      }
      row.record.copy = row.copy;
    }
  }

  std::optional<exchange::Fault> note_key(const std::string& key, int line) {
    const auto [first, is_new] = lines_.emplace(key, line);
    if (is_new) return std::nullopt;
    return exchange::Fault{
        table_.copies ? std::string{exchange::copy_column} : key_column(),
        same_key_reason(
            table_.copies
                ? say("names the same record as line {}; give it another number in the column "
                      "copy, or remove it",
                      first->second)
                : say("names the same record as line {}; remove one of them, or correct this one",
                      first->second))};
  }

  /// A second row with the key of another was refused; written back and imported uncorrected, it
  /// would quietly take the place of the first.
  std::optional<exchange::Fault> unresolved_twin(const exchange::ParsedRow<Record>& row,
                                                 const Record& stored) const {
    if (!run_.file.holds_rejects() || row.record == stored) return std::nullopt;
    const int at = run_.file.position_of(exchange::rejected_reason_column);
    const auto line = line_of_same_key(exchange::cell_at(row.source, at));
    if (!line) return std::nullopt;
    return exchange::Fault{
        key_column(),
        same_key_reason(say("names the same record as line {}, which is stored; correct the key, "
                            "or clear rejected_reason to let this row take its place",
                            *line))};
  }

  static std::vector<std::string> key_columns(const exchange::Table<Record>& table) {
    std::vector<std::string> names;
    for (const auto& column : table.columns) {
      if (column.in_key) names.push_back(column.name);
    }
    return names;
  }

  /// The one column that makes the key, or "" for the row as a whole.
  [[nodiscard]] std::string key_column() const {
    const auto names = key_columns(table_);
    return names.size() == 1 ? names.front() : std::string{};
  }

  void keep_absent_columns(Record& record, const Record& stored) const {
    const auto& positions = run_.file.positions();
    for (std::size_t i = 0; i < table_.columns.size(); ++i) {
      if (positions[i] < 0 && table_.columns[i].keep) table_.columns[i].keep(record, stored);
    }
  }

  void write(const Record& record, typename Stored::iterator stored) {
    if (stored == stored_.end()) {
      run_.work.put(record);
      ++run_.report.added;
    } else if (stored->second.record == record) {
      ++run_.report.unchanged;
      return;
    } else {
      run_.work.put_instead(stored->second.id, record);
      ++run_.report.changed;
    }
    run_.wrote = true;
  }

  FileImport& run_;
  const exchange::Table<Record>& table_;
  AlikeRows alike_;
  Stored stored_;
  std::unordered_map<std::string, int> numbered_;  ///< the last number given to each key
  std::unordered_map<std::string, int> lines_;     ///< where each key stands in the file
};

/// Reads every row of the file and merges it.
template <class Record>
void merge_file(FileImport& run, const exchange::Table<Record>& table) {
  RowMerge<Record> merge{run, table};
  const exchange::CurrencyOf currency_of = [&](exchange::CurrencyClues clues) {
    // A supplier whose currency cell is blank has the clinic's, not the one stored before.
    if (std::is_same_v<Record, Supplier> && clues.own) clues.supplier = {};
    return run.references.currency_of(clues);
  };
  const exchange::TableReader<Record> reader{run.file, table, run.options.format, currency_of};
  reader.read([&](exchange::ParsedRow<Record>& row) {
    run.cancelled = !run.progress.go_on(row.done);
    if (!run.cancelled) merge.take(row);
    return !run.cancelled;
  });
  if (!run.cancelled) merge.count_alike(reader);
}

}  // namespace sparewell::desk
