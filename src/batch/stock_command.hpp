/// What the subcommands of `stock` share.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/stock_booking.hpp"

namespace sparewell::batch {

Json json_of(const StockLevel& level);
Json json_of(const StockMovement& movement);

/// Books in a unit of work of its own and prints what was booked. Throws WrongUse when refused.
int book_and_print(const Context& context, const std::string& why,
                   const std::function<Expected<desk::Booked>(store::UnitOfWork&)>& book);

/// Prints `lines`, or the words that there is none, or `rows` under `name` as JSON.
int print_list(const Context& context, const char* name, Json rows,
               const std::vector<std::string>& lines, const char* none);

void add_stock_lists(Command& stock, Context& context);
void add_stock_moves(Command& stock, Context& context);
void add_stock_owed(Command& stock, Context& context);

/// The options that name pieces: --item, --lot, --use-by, --quantity, --from.
struct PiecesOptions {
  supply::Pieces pieces;
  std::string use_by;

  void add_to(Command& command, const char* from_help);
  /// Reads the date; a place that was not named is the clinic's main place.
  [[nodiscard]] supply::Pieces read(const store::Snapshot& snapshot) const;
};

}  // namespace sparewell::batch
