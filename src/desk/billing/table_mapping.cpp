#include "desk/billing/table_mapping.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "exchange/csv_text.hpp"
#include "exchange/sheet/sheet_table.hpp"

namespace sparewell::desk {
namespace {

Refusal suggestion(const exchange::SheetTable& table, std::string_view target) {
  const auto proposed = exchange::propose_mapping(table, target);
  const auto text = exchange::mapping_text(proposed);
  const auto complete = exchange::read_mapping_columns(text, target);
  if (complete) {
    return {
        say("{} has headings of its own; if they mean this, read it with --map '{}' (and "
            "--save-mapping NAME to keep it).",
            table.name, text)};
  }
  return {
      say("{} has headings of its own, of which {}; name the columns with --map "
          "\"FIELD=COLUMN;...\". {}",
          table.name,
          proposed.columns.empty() ? std::string{said("none is known")}
                                   : say("these are known: {}", text),
          complete.error().sentence)};
}

}  // namespace

std::string_view target_of(BillingFileKind kind) {
  return kind == BillingFileKind::claims ? exchange::claims_target : exchange::remittance_target;
}

Expected<ColumnMapping> mapping_for(const store::Snapshot& snapshot,
                                    const exchange::SheetTable& table,
                                    const BillingFileRequest& request) {
  const auto target = target_of(request.kind);
  if (!request.save_as.empty() && request.columns.empty()) {
    return refuse(std::string{said("A mapping is saved with its columns; name them with --map.")});
  }
  if (!request.mapping.empty()) {
    for (const auto& row : snapshot.all<ColumnMapping>()) {
      if (!same_word(row.record.name, request.mapping)) continue;
      if (row.record.target == target) return row.record;
      return refuse(say("The mapping '{}' is for {}, not for {}; name another.", row.record.name,
                        row.record.target, target));
    }
    return refuse(say(
        "There is no mapping '{}'; save one with --map \"FIELD=COLUMN;...\" --save-mapping '{}'.",
        request.mapping, request.mapping));
  }
  ColumnMapping made;
  made.name = request.save_as;
  made.target = target;
  made.date_pattern = request.date_pattern;
  made.decimal_sign = request.decimal_sign;
  if (!request.columns.empty()) {
    auto columns = exchange::read_mapping_columns(request.columns, target);
    if (!columns) return tl::unexpected(columns.error());
    made.columns = std::move(*columns);
    return made;
  }
  if (!exchange::has_own_headings(table, target)) {
    return tl::unexpected(suggestion(table, target));
  }
  made.columns = exchange::propose_mapping(table, target).columns;
  return made;
}

std::string suggested_columns(const BillingFileRequest& request) {
  const auto bytes = exchange::read_bytes(request.file);
  if (!bytes) return {};
  exchange::FolderFormat format;
  format.separator = request.separator;
  const auto sheet =
      exchange::read_sheet_bytes(request.file.filename().string(), *bytes, request.sheet, format);
  const auto target = target_of(request.kind);
  if (!sheet || exchange::has_own_headings(*sheet, target)) return {};
  const auto proposed = exchange::propose_mapping(*sheet, target);
  return proposed.columns.empty() ? std::string{} : exchange::mapping_text(proposed);
}

bool save_mapping(store::UnitOfWork& work, const ColumnMapping& mapping) {
  for (const auto& row : work.all<ColumnMapping>()) {
    if (row.record.name != mapping.name) continue;
    if (row.record == mapping) return false;
    work.put_instead(row.id, mapping);
    return true;
  }
  work.put(mapping);
  return true;
}

}  // namespace sparewell::desk
