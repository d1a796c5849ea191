/// Parts lent to a patient on trial.
#pragma once

#include "clinic/loan.hpp"
#include "supply/stock_move.hpp"

namespace sparewell::supply {

/// From a store to the place "on loan". Refuses a lot that is past its use-by date.
[[nodiscard]] Decided<StockMove> lend(const StockView& view, const Pieces& wanted, Date on,
                                      const std::string& reason);

/// How pieces of a loan end; pieces that are named nowhere stay on loan.
struct LoanEnd {
  int came_back = 0;
  std::string place;  ///< where those are put: a store or a quarantine
  int kept = 0;       ///< issued to the patient
  int lost = 0;       ///< written off
  std::string reason;
};

struct LoanRefusal {
  enum Kind {
    nothing,    ///< no piece is named
    too_many,   ///< more than are outstanding
    no_place,   ///< where do they go?
    bad_place,  ///< neither a store nor a quarantine
    no_reason,  ///< lost pieces and those for quarantine have to be explained
    not_there   ///< the ledger has fewer on loan: it was corrected by hand
  };
  Kind kind = nothing;
  int there = 0;  ///< not_there: pieces of the lot on loan
};

struct LoanMove {
  Loan after;
  std::vector<StockMovement> movements;
};

[[nodiscard]] tl::expected<LoanMove, LoanRefusal> settle_loan(const StockView& view,
                                                              const Loan& loan, const LoanEnd& end,
                                                              Date on);

/// Loans with pieces outstanding, by the day they are due, then number.
[[nodiscard]] std::vector<Loan> open_loans(std::vector<Loan> loans);

}  // namespace sparewell::supply
