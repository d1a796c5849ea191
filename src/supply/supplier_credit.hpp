/// Parts sent back to their supplier, and the credit for them.
#pragma once

#include "clinic/item.hpp"
#include "clinic/supplier_return.hpp"
#include "supply/stock_move.hpp"

namespace sparewell::supply {

/// From a store or a quarantine to the place "at supplier S". Needs a reason.
[[nodiscard]] Decided<StockMove> send_back(const StockView& view, const Pieces& wanted,
                                           const SupplierName& supplier, Date on,
                                           const std::string& reason);

/// What the supplier owes by the catalogue's unit cost; nullopt when it names none.
[[nodiscard]] std::optional<Money> usual_credit(const Item& item, int quantity);

/// What a supplier answers to a return.
struct CreditNote {
  std::optional<Money> amount;  ///< credited with this note; empty for none
  bool is_last = false;         ///< nothing more will come, whatever is still due
  bool accept_more = false;     ///< more than was due is right
  std::string back_to;          ///< the pieces were sent back and lie there; "" when they were not
  std::string reason;           ///< goes into the ledger with the pieces
};

struct CreditRefusal {
  enum Kind {
    closed,          ///< nothing is expected any more
    nothing,         ///< neither an amount nor an end
    negative,        ///< an amount below zero
    other_currency,  ///< than the one that is due
    too_much,        ///< `outstanding` is still due
    bad_place,       ///< neither a store nor a quarantine
    not_there        ///< the ledger has fewer pieces at the supplier: it was corrected by hand
  };
  Kind kind = nothing;
  std::optional<Money> outstanding;
  int there = 0;
};

struct CreditMove {
  SupplierReturn after;
  std::vector<StockMovement> movements;  ///< once it is closed
};

/// The return is closed when all that is due has been credited, when the note is the last, or when
/// the pieces came back; they then leave the place "at supplier S".
[[nodiscard]] tl::expected<CreditMove, CreditRefusal> credit(const StockView& view,
                                                             const SupplierReturn& sent,
                                                             const CreditNote& note, Date on);

/// Returns whose credit is still expected, the oldest first.
[[nodiscard]] std::vector<SupplierReturn> open_credits(std::vector<SupplierReturn> returns);
/// What is outstanding, summed for each currency, by its code.
[[nodiscard]] std::vector<Money> credit_sums(const std::vector<SupplierReturn>& open);

}  // namespace sparewell::supply
