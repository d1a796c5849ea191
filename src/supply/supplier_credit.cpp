#include "supply/supplier_credit.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include <fmt/format.h>

namespace sparewell::supply {
namespace {

using RefusalKind = CreditRefusal::Kind;

int at_supplier(const StockView& view, const SupplierReturn& sent) {
  const auto place = supplier_place(sent.supplier.text).name;
  const auto found = std::ranges::find_if(view.levels, [&](const StockLevel& level) {
    return level.lot == sent.lot && level.place == place;
  });
  return found == view.levels.end() ? 0 : found->quantity;
}

std::optional<CreditRefusal> refusal_of(const StockView& view, const SupplierReturn& sent,
                                        const CreditNote& note) {
  const auto outstanding = sent.outstanding();
  if (!sent.is_open()) return CreditRefusal{RefusalKind::closed, {}, 0};
  if (!note.amount && !note.is_last && note.back_to.empty())
    return CreditRefusal{RefusalKind::nothing, {}, 0};
  if (note.amount) {
    if (note.amount->minor < 0) return CreditRefusal{RefusalKind::negative, {}, 0};
    if (outstanding && note.amount->currency != outstanding->currency) {
      return CreditRefusal{RefusalKind::other_currency, outstanding, 0};
    }
    if (sent.credited && sent.credited->currency != note.amount->currency) {
      return CreditRefusal{RefusalKind::other_currency, sent.credited, 0};
    }
    if (outstanding && *note.amount > *outstanding && !note.accept_more) {
      return CreditRefusal{RefusalKind::too_much, outstanding, 0};
    }
  }
  if (!note.back_to.empty()) {
    const auto sort = view.place(note.back_to).sort;
    if (sort != PlaceSort::store && sort != PlaceSort::quarantine) {
      return CreditRefusal{RefusalKind::bad_place, {}, 0};
    }
  }
  return std::nullopt;
}

void take_from_supplier(CreditMove& made, const CreditNote& note, Date on) {
  const auto& sent = made.after;
  const bool came_back = !note.back_to.empty();
  auto reason =
      fmt::format("return {}: {} {}, reference {}", sent.number,
                  came_back ? "sent back by" : "settled by", sent.supplier.text, sent.reference);
  if (!note.reason.empty()) reason += fmt::format(", {}", note.reason);
  StockMovement out{sent.lot,
                    supplier_place(sent.supplier.text).name,
                    came_back ? MovementKind::transfer : MovementKind::write_off,
                    -sent.quantity,
                    on,
                    std::move(reason)};
  made.movements.push_back(out);
  if (!came_back) return;
  out.place = note.back_to;
  out.quantity = sent.quantity;
  made.movements.push_back(std::move(out));
}

}  // namespace

Decided<StockMove> send_back(const StockView& view, const Pieces& wanted,
                             const SupplierName& supplier, Date on, const std::string& reason) {
  const auto from = view.place(wanted.place);
  if (is_kept_by_program(from)) return refuse_move(MoveRefusal::to_be_settled, wanted);
  if (reason.empty()) return refuse_move(MoveRefusal::no_reason, wanted);
  const auto pieces = find_pieces(view, wanted);
  if (!pieces) return tl::unexpected{pieces.error()};
  return carry(view, *pieces, supplier_place(supplier.text), MovementKind::transfer, on, reason);
}

std::optional<Money> usual_credit(const Item& item, int quantity) {
  if (!item.unit_cost) return std::nullopt;
  return *item.unit_cost * quantity;
}

tl::expected<CreditMove, CreditRefusal> credit(const StockView& view, const SupplierReturn& sent,
                                               const CreditNote& note, Date on) {
  if (const auto refusal = refusal_of(view, sent, note)) return tl::unexpected{*refusal};
  CreditMove made{sent, {}};
  auto& after = made.after;
  if (note.amount) after.credited = after.credited ? *after.credited + *note.amount : *note.amount;
  const auto rest = after.outstanding();
  const bool is_paid = note.amount && rest && rest->minor <= 0;
  if (!is_paid && !note.is_last && note.back_to.empty()) return made;
  if (const int there = at_supplier(view, sent); there < sent.quantity) {
    return tl::unexpected{CreditRefusal{RefusalKind::not_there, {}, there}};
  }
  after.closed_on = on;
  take_from_supplier(made, note, on);
  return made;
}

std::vector<SupplierReturn> open_credits(std::vector<SupplierReturn> returns) {
  std::erase_if(returns, [](const SupplierReturn& sent) { return !sent.is_open(); });
  std::ranges::sort(returns, {}, [](const SupplierReturn& sent) {
    return std::tuple{sent.sent_on, sent.number};
  });
  return returns;
}

std::vector<Money> credit_sums(const std::vector<SupplierReturn>& open) {
  std::map<Currency, Money> sums;
  for (const auto& sent : open) {
    const auto rest = sent.outstanding();
    if (!rest) continue;
    const auto [sum, is_new] = sums.try_emplace(rest->currency, *rest);
    if (!is_new) sum->second = sum->second + *rest;
  }
  std::vector<Money> made;
  for (const auto& [currency, sum] : sums) made.push_back(sum);
  return made;
}

}  // namespace sparewell::supply
