#include "supply/lending.hpp"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>

namespace sparewell::supply {
namespace {

int on_loan(const StockView& view, const Lot& lot) {
  const auto found = std::ranges::find_if(view.levels, [&](const StockLevel& level) {
    return level.lot == lot && level.place == loan_place().name;
  });
  return found == view.levels.end() ? 0 : found->quantity;
}

std::optional<LoanRefusal> refusal_of(const StockView& view, const Loan& loan, const LoanEnd& end) {
  if (end.came_back < 0 || end.kept < 0 || end.lost < 0) return LoanRefusal{LoanRefusal::nothing};
  // In a wider type: three large numbers must not add up to a small one.
  const long long pieces = static_cast<long long>(end.came_back) + end.kept + end.lost;
  if (pieces == 0) return LoanRefusal{LoanRefusal::nothing};
  if (pieces > loan.outstanding()) return LoanRefusal{LoanRefusal::too_many};
  if (end.came_back > 0) {
    if (end.place.empty()) return LoanRefusal{LoanRefusal::no_place};
    const auto sort = view.place(end.place).sort;
    if (sort != PlaceSort::store && sort != PlaceSort::quarantine) {
      return LoanRefusal{LoanRefusal::bad_place};
    }
    if (sort == PlaceSort::quarantine && end.reason.empty()) {
      return LoanRefusal{LoanRefusal::no_reason};
    }
  }
  if (end.lost > 0 && end.reason.empty()) return LoanRefusal{LoanRefusal::no_reason};
  const int there = on_loan(view, loan.lot);
  if (there < pieces) return LoanRefusal{LoanRefusal::not_there, there};
  return std::nullopt;
}

}  // namespace

Decided<StockMove> lend(const StockView& view, const Pieces& wanted, Date on,
                        const std::string& reason) {
  const Place from = view.place(wanted.place);
  if (from.sort == PlaceSort::quarantine) return refuse_move(MoveRefusal::held_back, wanted);
  if (from.sort != PlaceSort::store) return refuse_move(MoveRefusal::to_be_settled, wanted);
  const auto pieces = find_pieces(view, wanted);
  if (!pieces) return tl::unexpected{pieces.error()};
  if (pieces->lot.use_by && *pieces->lot.use_by < on) {
    return refuse_move(MoveRefusal::expired, wanted, {}, {*pieces});
  }
  return carry(view, *pieces, loan_place(), MovementKind::transfer, on, reason);
}

tl::expected<LoanMove, LoanRefusal> settle_loan(const StockView& view, const Loan& loan,
                                                const LoanEnd& end, Date on) {
  if (const auto refusal = refusal_of(view, loan, end)) return tl::unexpected{*refusal};
  LoanMove made{loan, {}};
  made.after.came_back += end.came_back;
  made.after.kept += end.kept;
  made.after.lost += end.lost;
  const auto away = [&](MovementKind kind, int pieces, const char* what) {
    if (pieces == 0) return;
    auto reason = fmt::format("loan {}: {}", loan.number, what);
    if (!end.reason.empty()) reason += fmt::format(", {}", end.reason);
    made.movements.push_back({loan.lot, loan_place().name, kind, -pieces, on, std::move(reason)});
  };
  away(MovementKind::give_back, end.came_back, "came back");
  if (end.came_back > 0) {
    auto in = made.movements.back();
    in.place = end.place;
    in.quantity = end.came_back;
    made.movements.push_back(std::move(in));
  }
  away(MovementKind::issue, end.kept, "kept by the patient");
  away(MovementKind::write_off, end.lost, "lost");
  return made;
}

std::vector<Loan> open_loans(std::vector<Loan> loans) {
  std::erase_if(loans, [](const Loan& loan) { return loan.outstanding() == 0; });
  std::ranges::sort(loans, {}, [](const Loan& loan) {
    return std::tuple{loan.due_on, loan.number};
  });
  return loans;
}

}  // namespace sparewell::supply
