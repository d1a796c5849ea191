#include "desk/restock_rows.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/restock_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string id_of(const supply::RestockMove& move) {
  return fmt::format("{}\n{}\n{}", move.item.text, move.from.place, move.to.place);
}

Cell chance_cell(double chance) {
  return {chance_words(chance), chance};
}

}  // namespace

std::vector<Column> move_columns() {
  return {
      {said("From"), 16, Align::left, said("The store that sends"), 1},
      {said("To"), 16, Align::left, said("The store where they are needed"), 1},
      {said("Item"), 12, Align::left, said("The clinic's item code")},
      {said("Description"), 30, Align::left, "", 2},
      {said("Pieces"), 8, Align::right, ""},
      {said("Lots"), 28, Align::left, said("What to send: first expiry, first out"), 1},
      {said("Runs out"), 10, Align::right,
       said("Chance to run out at the store that receives, as it is")},
      {said("If sent"), 11, Align::right, said("The same when all moves of the item are sent")}};
}

std::vector<TableRow> move_rows(const Day& day) {
  std::vector<TableRow> rows;
  for (const auto& move : day.restock().moves) {
    const auto* item = day.index().item(move.item);
    const auto words = item ? item_words(*item) : std::string{};
    TableRow row;
    row.id = id_of(move);
    row.cells = {{move.from.place, std::nullopt},
                 {move.to.place, std::nullopt},
                 {move.item.text, std::nullopt},
                 {words, std::nullopt},
                 count_cell(move.quantity),
                 {lots_words(move), std::nullopt},
                 chance_cell(move.to.chance_short_before),
                 chance_cell(move.to.chance_short_after)};
    row.search = folded(fmt::format("{} {} {} {} {}", move.from.place, move.to.place,
                                    move.item.text, words, lots_words(move)));
    rows.push_back(std::move(row));
  }
  return rows;
}

const supply::RestockMove* find_move(const Day& day, const std::string& id) {
  for (const auto& move : day.restock().moves) {
    if (id_of(move) == id) return &move;
  }
  return nullptr;
}

StockForm send_form(const Day& day, const supply::RestockMove& chosen) {
  const auto& plan = day.restock();
  std::vector<std::string> which{to_say("The chosen move")};
  if (plan.moves.size() > 1) {
    which.push_back(say("All {} moves", plan.moves.size()));
  }
  StockForm form{said("Send"),  {}, {},
                 said("&Send"), {}, to_say("stock was sent between branches")};
  form.intro = say("{}. What is sent lies in transit until you settle its arrival.",
                   capitalised(move_words(chosen)));
  form.fields = {{said("&Which"), which[0], said("What is sent now"), which, true}};
  form.book = [one = std::vector{chosen}, all = plan.moves, which, today = day.today()](
                  store::UnitOfWork& work, const std::vector<std::string>& given) {
    return book_restock(work, given[0] == which[0] ? one : all, today);
  };
  return form;
}

}  // namespace sparewell::desk
