#include "desk/billing/claim_file_content.hpp"

#include "clinic/say.hpp"
#include "desk/billing/table_mapping.hpp"
#include "exchange/csv_text.hpp"
#include "exchange/sheet/sheet_table.hpp"
#include "exchange/x12/claims_837.hpp"
#include "exchange/x12/remittance_835.hpp"
#include "exchange/x12/values.hpp"

namespace sparewell::desk {
namespace {

/// What an X12 file holds of the wanted kind; a sentence when it holds none.
std::string read_transactions(exchange::X12File& file, BillingFileKind kind,
                              const Currency& currency, FileContent& into) {
  const std::string_view wanted = kind == BillingFileKind::claims ? "837" : "835";
  bool there = false;
  for (const auto& transaction : file.transactions) {
    there = there || transaction.kind == wanted;
  }
  if (!there) {
    const bool other = !file.transactions.empty() && (file.transactions.front().kind == "835" ||
                                                      file.transactions.front().kind == "837");
    if (!other) return say("{} holds no {} transaction; name another file.", file.name, wanted);
    return kind == BillingFileKind::claims
               ? say("{} is a file of payments (835); read it as one.", file.name)
               : say("{} is a file of claims (837); read it as one.", file.name);
  }
  into.currency = exchange::x12_currency_of(file, currency);
  if (kind == BillingFileKind::claims) {
    into.claims = exchange::read_claims_837(file, currency);
  } else {
    into.payments.payments = exchange::read_payments_835(file, currency);
  }
  return {};
}

}  // namespace

Expected<FileContent> read_file_content(const store::Snapshot& snapshot,
                                        const BillingFileRequest& request,
                                        BillingFileOutcome& outcome) {
  auto bytes = exchange::read_bytes(request.file);
  if (!bytes) return tl::unexpected(bytes.error());
  FileContent content;
  content.currency = snapshot.settings().currency;
  outcome.is_x12 = exchange::looks_like_x12(*bytes);
  if (outcome.is_x12) {
    auto file = exchange::read_x12(outcome.file, std::move(*bytes));
    if (!file) return tl::unexpected(file.error());
    auto refusal = read_transactions(*file, request.kind, content.currency, content);
    if (!refusal.empty()) return refuse(std::move(refusal));
    outcome.unread = std::move(file->reading.unread);
    outcome.differences = std::move(file->reading.differences);
    outcome.notes = std::move(file->reading.notes);
    return content;
  }
  exchange::FolderFormat format;
  format.separator = request.separator;
  const auto sheet = exchange::read_sheet_bytes(outcome.file, *bytes, request.sheet, format);
  if (!sheet) return tl::unexpected(sheet.error());
  auto mapping = mapping_for(snapshot, *sheet, request);
  if (!mapping) return tl::unexpected(mapping.error());
  const auto table = exchange::MappedTable::open(*sheet, *mapping);
  if (!table) return tl::unexpected(table.error());
  if (request.kind == BillingFileKind::claims) {
    content.claims = exchange::read_claim_table(*table, content.currency, outcome.notes);
  } else {
    content.payments = exchange::read_remittance_table(*table, content.currency, outcome.notes);
  }
  content.holds_rejects = table->holds_rejects();
  outcome.mapping = std::move(*mapping);
  return content;
}

}  // namespace sparewell::desk
