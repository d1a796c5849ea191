#include <iostream>

#include <fmt/format.h>

#include "batch/stock_command.hpp"
#include "desk/restock.hpp"
#include "desk/restock_words.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  int days_between = supply::usual_days_between_moves;
  bool send = false;
};

Json json_of(const supply::PlaceOutlook& place) {
  return {{"place", place.place},
          {"until", batch::json_of(place.until)},
          {"on_hand", place.on_hand},
          {"in_transit", place.in_transit},
          {"reserved", place.reserved},
          {"expected", place.expected},
          {"chance_short_before", place.chance_short_before},
          {"chance_short_after", place.chance_short_after}};
}

Json json_of(const supply::RestockMove& move, const desk::RestockPlan& plan) {
  Json lots = Json::array();
  for (const auto& level : move.lots) {
    lots.push_back({{"lot", level.lot.lot},
                    {"use_by", batch::json_of(level.lot.use_by)},
                    {"quantity", level.quantity}});
  }
  Json needs = Json::array();
  for (const auto& need : move.needs) {
    needs.push_back(
        {{"patient_ref", need.patient.text}, {"side", word(need.side)}, {"chance", need.chance}});
  }
  return {{"item_code", move.item.text},
          {"quantity", move.quantity},
          {"from", json_of(move.from)},
          {"to", json_of(move.to)},
          {"lots", std::move(lots)},
          {"needs", std::move(needs)},
          {"more_needs", move.more_needs},
          {"for_new_patients", move.for_new_patients},
          {"missing_before", move.missing_before},
          {"missing_after", move.missing_after},
          {"why", desk::why(move, plan)}};
}

void print_plan(const desk::RestockPlan& plan) {
  if (plan.moves.empty()) {
    std::cout << desk::nothing_to_move_words(plan) << '\n';
    return;
  }
  for (const auto& move : plan.moves) {
    std::cout << fmt::format("{}\n  {}\n", desk::move_words(move), desk::why(move, plan));
  }
  std::cout << desk::summary_words(plan) << '\n';
}

int run(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto plan = [&] {
    const auto snapshot = store->read();
    auto clinic = as_of(store::load_clinic(*snapshot), context.today());
    const auto ledger = desk::ledger_for_restock(*snapshot, clinic);
    const auto assessment =
        desk::forecast(std::move(clinic), desk::built_in_priors(), context.today());
    return desk::plan_restock(assessment, ledger, options.days_between);
  }();
  const bool sends = options.send && !plan.moves.empty();
  if (sends) {
    const auto booked = desk::in_one_work(
        *store, context.author("stock was sent between branches"), [&](store::UnitOfWork& work) {
          return desk::book_restock(work, plan.moves, context.today());
        });
    if (!booked) throw WrongUse{booked.error().sentence};
  }
  if (!context.json) {
    print_plan(plan);
    if (sends) {
      std::cout << "They are sent, and lie in transit until \"stock arrive\" settles them.\n";
    }
    return done;
  }
  Json places = Json::array();
  for (const auto& way : plan.ways) {
    places.push_back({{"place", way.place}, {"transit_days", way.days}, {"transfers", way.seen}});
  }
  Json moves = Json::array();
  for (const auto& move : plan.moves) moves.push_back(json_of(move, plan));
  print({{"today", batch::json_of(context.today())},
         {"days", plan.days_between},
         {"places", std::move(places)},
         {"sent", sends},
         {"moves", std::move(moves)}});
  return done;
}

}  // namespace

void add_restock(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("restock", "Which pieces to move between branches today, and why");
  const auto options = std::make_shared<Options>();
  command
      ->add_option("--days", options->days_between,
                   "Days from this round of moves to the next (default: 7)")
      ->within(1, 365);
  command->add_flag("--send", options->send, "Book the moves as sent");
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
