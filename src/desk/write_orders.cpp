#include "desk/write_orders.hpp"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/order_changes.hpp"
#include "desk/order_drafts.hpp"
#include "desk/order_words.hpp"
#include "exchange/order_workbook.hpp"

namespace sparewell::desk {
namespace {

using supply::ProposalLine;

/// One entry a known supplier, in the order of the proposal; what has none comes last, under "".
std::vector<SupplierProposal> by_supplier(const Assessment& assessment, const ClinicIndex& index) {
  std::vector<SupplierProposal> made;
  SupplierProposal unknown;
  for (const ProposalLine& line : assessment.proposal) {
    if (index.supplier(line.supplier) == nullptr) {
      unknown.lines.push_back(&line);
      continue;
    }
    auto found = std::ranges::find(made, line.supplier, &SupplierProposal::supplier);
    if (found == made.end()) found = made.insert(made.end(), {line.supplier, {}});
    found->lines.push_back(&line);
  }
  if (!unknown.lines.empty()) made.push_back(std::move(unknown));
  return made;
}

/// The patients, with their sides, for whom a line is ordered.
void add_patients(PurchaseOrderLine& made, const ProposalLine& line) {
  const auto& reason = line.reason;
  if (!reason.patient_ordered) return;
  for (const auto& need : reason.needs) made.for_patients.push_back({need.patient, need.side});
  for (const auto& patient : reason.reserved_for) made.for_patients.push_back({patient, {}});
  std::ranges::sort(made.for_patients);
}

PurchaseOrderLine order_line(const ProposalLine& line, const ClinicIndex& index) {
  PurchaseOrderLine made;
  if (const Item* item = index.item(line.item)) {
    made.supplier_item = item->supplier_item;
    made.description = item->description;
    made.size_label = item->size_label;
  }
  made.item = line.item;
  made.quantity = line.quantity;
  made.unit_cost = line.unit_cost;
  add_patients(made, line);
  return made;
}

PurchaseOrder purchase_order(const Assessment& assessment, const ClinicIndex& index,
                             const SupplierProposal& proposal, const std::string& number) {
  PurchaseOrder order;
  order.number = number;
  if (const Supplier* supplier = index.supplier(proposal.supplier)) order.supplier = *supplier;
  order.clinic_name = assessment.clinic.settings.name;
  order.ship_to = assessment.clinic.settings.ship_to;
  order.ordered_on = assessment.today;
  for (const ProposalLine* line : proposal.lines) {
    order.lines.push_back(order_line(*line, index));
  }
  order.expected_by = expected_by(proposal, assessment.today);
  return order;
}

WrittenOrder written_order(const PurchaseOrder& order, const std::filesystem::path& folder) {
  WrittenOrder made{order.number, order.supplier.name, folder / exchange::order_file_name(order),
                    static_cast<int>(order.lines.size()), 0};
  for (const auto& line : order.lines) made.pieces += line.quantity;
  return made;
}

/// Why the draft cannot be sent yet; "" when it can.
std::string waiting_words(store::Store& store, const std::string& number) {
  const auto snapshot = store.read();
  const auto limit = snapshot->settings().approval_above;
  const auto stored = find_order(*snapshot, {number, {}});
  if (!stored ||
      supply::stage_of(stored->order, limit) != supply::OrderStage::waiting_for_approval) {
    return {};
  }
  return waiting_sentence(stored->order, *limit);
}

void make_folder(const std::filesystem::path& folder) {
  std::error_code failure;
  std::filesystem::create_directories(folder, failure);
  if (!failure) return;
  throw std::runtime_error{
      say("The folder {} cannot be made: {}; choose another. No order was written.",
          folder.string(), failure.message())};
}

}  // namespace

std::vector<WrittenOrder> write_orders(store::Store& store, const Assessment& assessment,
                                       const std::filesystem::path& folder,
                                       const store::Author& author, ForSending for_sending) {
  make_folder(folder);
  const ClinicIndex index{assessment.clinic};
  const auto proposals = by_supplier(assessment, index);
  auto orderable = proposals;
  std::erase_if(orderable, [](const SupplierProposal& p) { return p.supplier.empty(); });
  auto numbers = keep_as_drafts(store, orderable, assessment.today, author);
  numbers.resize(proposals.size());

  std::vector<WrittenOrder> written;
  std::string failures;
  for (std::size_t i = 0; i < proposals.size(); ++i) {
    const auto order = purchase_order(assessment, index, proposals[i], numbers[i]);
    written.push_back(written_order(order, folder));
    if (for_sending == ForSending::yes && !order.number.empty()) {
      written.back().waiting = waiting_words(store, order.number);
      if (!written.back().waiting.empty()) {
        written.back().file.clear();
        continue;
      }
    }
    try {
      exchange::write_order_workbook(order, written.back().file);
    } catch (const std::runtime_error& failure) {
      if (!failures.empty()) failures += ' ';
      failures +=
          fmt::format("{}{}.", failure.what(),
                      order.number.empty() ? std::string{}
                                           : say("; order {} is kept as a draft", order.number));
    }
  }
  if (!failures.empty()) throw std::runtime_error{failures};
  return written;
}

SentOrders mark_as_sent(store::Store& store, const std::vector<std::string>& order_numbers,
                        Date today, const store::Author& author) {
  const auto work = store.begin_write(author);
  SentOrders made;
  for (const auto& number : order_numbers) {
    const auto stored = find_order(*work, {number, {}});
    if (!stored) continue;
    const auto stage = supply::stage_of(stored->order, work->settings().approval_above);
    if (stage == supply::OrderStage::waiting_for_approval) {
      made.waiting.push_back(waiting_sentence(stored->order, *work->settings().approval_above));
    } else if (stage == supply::OrderStage::draft &&
               place_order(*work, {number, {}}, {today, author.who})) {
      made.placed.push_back(number);
    }
  }
  if (!made.placed.empty()) work->commit();
  return made;
}

}  // namespace sparewell::desk
