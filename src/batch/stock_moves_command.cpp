#include <fmt/format.h>

#include "batch/stock_command.hpp"

namespace sparewell::batch {
namespace {

/// What is asked of a command that moves pieces.
struct Options {
  PiecesOptions given;
  std::string to;
  std::string reason;
  bool at_once = false;
};

using Made = std::shared_ptr<Options>;

template <class Book>
void books(Command* command, Context& context, const std::string& why, Book book) {
  command->callback([&context, why, book] {
    context.run = [&context, why, book] { return book_and_print(context, why, book); };
  });
}

void add_transfer(Command& stock, Context& context) {
  auto* command = stock.add_subcommand(
      "transfer", "Send pieces to another place; they lie in transit until they arrive");
  const auto options = std::make_shared<Options>();
  options->given.add_to(*command, "Where they lie (default: the main place)");
  command->add_option("--to", options->to, "Where they go")->required();
  command->add_flag("--at-once", options->at_once, "They are there already");
  command->add_option("--reason", options->reason, "Why, for the ledger");
  books(command, context, "stock was sent to another place",
        [&context, options](store::UnitOfWork& work) {
          const auto travel = options->at_once ? supply::Travel::at_once : supply::Travel::sent;
          return desk::book_transfer(work, options->given.read(work), options->to, travel,
                                     context.today(), options->reason);
        });
}

void add_arrive(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("arrive", "Record what arrived of what was sent to a place");
  const auto arrival = std::make_shared<supply::Arrival>();
  const auto use_by = std::make_shared<std::string>();
  command->add_option("--item", arrival->item.text, "The item's code")->required();
  command->add_option("--lot", arrival->lot, "The lot (default: the only one under way)");
  command->add_option("--use-by", *use_by, "Its use-by date, where two lots have one number");
  command->add_option("--to", arrival->to, "The place where they arrived")->required();
  command->add_option("--quantity", arrival->quantity, "Pieces that came (default: all)")
      ->within(0, 1'000'000);
  command->add_flag("--rest-lost", arrival->rest_is_lost,
                    "The rest will not come and is written off");
  command->add_option("--reason", arrival->reason, "Why fewer or more came than were sent");
  books(command, context, "a transfer arrived",
        [&context, arrival, use_by](store::UnitOfWork& work) {
          auto read = *arrival;
          if (!use_by->empty()) read.use_by = date_option("--use-by", *use_by);
          return desk::book_arrival(work, read, context.today());
        });
}

void add_quarantine(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("quarantine", "Hold pieces back");
  const auto options = std::make_shared<Options>();
  options->given.add_to(*command, "Where they lie (default: the main place)");
  command->add_option("--to", options->to, "The quarantine (default: \"quarantine\")");
  command->add_option("--reason", options->reason, "Why")->required();
  books(command, context, "stock was put into quarantine",
        [&context, options](store::UnitOfWork& work) {
          return desk::book_quarantine(work, options->given.read(work), options->to,
                                       context.today(), options->reason);
        });
}

void add_release(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("release", "Let pieces out of quarantine");
  const auto options = std::make_shared<Options>();
  options->given.add_to(*command, "The quarantine (default: \"quarantine\")");
  command->add_option("--to", options->to, "The store (default: the main place)");
  command->add_option("--reason", options->reason, "Why they may be handed out")->required();
  books(command, context, "stock was released from quarantine",
        [&context, options](store::UnitOfWork& work) {
          auto given = options->given;
          if (given.pieces.place.empty()) given.pieces.place = supply::usual_quarantine;
          return desk::book_release(work, given.read(work), options->to, context.today(),
                                    options->reason);
        });
}

void add_write_off(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("write-off", "Take pieces off the books");
  const auto options = std::make_shared<Options>();
  const auto why = std::make_shared<std::string>();
  options->given.add_to(*command, "Where they lie (default: the main place)");
  command->add_option("--why", *why, "expired, damaged or lost")
      ->required()
      ->one_of({"expired", "damaged", "lost"});
  command->add_option("--note", options->reason, "More about it, for the ledger");
  books(command, context, "stock was written off",
        [&context, options, why](store::UnitOfWork& work) {
          return desk::book_write_off(work, options->given.read(work),
                                      *parse_word<supply::WriteOff>(*why), context.today(),
                                      options->reason);
        });
}

void add_reverse(Command& stock, Context& context) {
  auto* command = stock.add_subcommand("reverse", "Take back a booking that was a mistake");
  struct Reversal {
    std::int64_t booking = 0;
    std::string reason;
  };
  const auto options = std::make_shared<Reversal>();
  command->add_option("--booking", options->booking, "Its number, from stock history")->required();
  command->add_option("--reason", options->reason, "Why")->required();
  books(command, context, "a booking was taken back", [&context, options](store::UnitOfWork& work) {
    return desk::book_reversal(work, {options->booking}, context.today(), options->reason);
  });
}

}  // namespace

void add_stock_moves(Command& stock, Context& context) {
  add_transfer(stock, context);
  add_arrive(stock, context);
  add_quarantine(stock, context);
  add_release(stock, context);
  add_write_off(stock, context);
  add_reverse(stock, context);
}

}  // namespace sparewell::batch
