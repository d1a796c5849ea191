#include "batch/stock_command.hpp"

#include <iostream>

#include "desk/stock_words.hpp"

namespace sparewell::batch {

Json json_of(const StockLevel& level) {
  return {{"item_code", level.lot.item.text},
          {"lot", level.lot.lot},
          {"use_by", json_of(level.lot.use_by)},
          {"place", level.place},
          {"quantity", level.quantity}};
}

Json json_of(const StockMovement& movement) {
  return {{"item_code", movement.lot.item.text},
          {"lot", movement.lot.lot},
          {"use_by", json_of(movement.lot.use_by)},
          {"place", movement.place},
          {"kind", word(movement.kind)},
          {"quantity", movement.quantity},
          {"on", json_of(movement.on)},
          {"reason", movement.reason}};
}

int book_and_print(const Context& context, const std::string& why,
                   const std::function<Expected<desk::Booked>(store::UnitOfWork&)>& book) {
  const auto store = context.open(store::OpenMode::existing);
  const auto booked = desk::in_one_work(*store, context.author(why), book);
  if (!booked) throw WrongUse{booked.error().sentence};
  if (!context.json) {
    for (const auto& line : desk::booked_lines(*booked)) std::cout << line << '\n';
    return done;
  }
  Json movements = Json::array();
  for (const auto& movement : booked->movements) movements.push_back(json_of(movement));
  print({{"movements", std::move(movements)},
         {"number", booked->number > 0 ? Json(booked->number) : Json(nullptr)},
         {"notes", booked->notes}});
  return done;
}

int print_list(const Context& context, const char* name, Json rows,
               const std::vector<std::string>& lines, const char* none) {
  if (context.json) {
    print({{"today", json_of(context.today())}, {name, std::move(rows)}});
    return done;
  }
  if (lines.empty()) std::cout << none << '\n';
  for (const auto& line : lines) std::cout << line << '\n';
  return done;
}

void PiecesOptions::add_to(Command& command, const char* from_help) {
  command.add_option("--item", pieces.item.text, "The item's code")->required();
  command.add_option("--lot", pieces.lot, "The lot (default: the only one there)");
  command.add_option("--use-by", use_by, "Its use-by date, where two lots have one number");
  command.add_option("--quantity", pieces.quantity, "Pieces")->required()->within(1, 1'000'000);
  command.add_option("--from", pieces.place, from_help);
}

supply::Pieces PiecesOptions::read(const store::Snapshot& snapshot) const {
  auto made = pieces;
  if (!use_by.empty()) made.use_by = date_option("--use-by", use_by);
  if (made.place.empty()) made.place = snapshot.settings().main_place;
  return made;
}

void add_stock(Command& app, Context& context) {
  auto* stock = app.add_subcommand("stock", "What lies where, and what moves between places");
  stock->require_subcommand();
  stock->fallthrough();
  add_stock_lists(*stock, context);
  add_stock_moves(*stock, context);
  add_stock_owed(*stock, context);
}

}  // namespace sparewell::batch
