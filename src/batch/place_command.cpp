#include <iostream>

#include <fmt/format.h>

#include "batch/stock_command.hpp"
#include "desk/stock_list.hpp"
#include "desk/stock_words.hpp"

namespace sparewell::batch {
namespace {

int list(const Context& context) {
  Json rows = Json::array();
  std::vector<std::string> lines;
  for (const auto& place : desk::all_places(context.clinic_on(context.today()))) {
    rows.push_back({{"place", place.name}, {"sort", word(place.sort)}});
    lines.push_back(desk::place_words(place));
  }
  return print_list(context, "places", std::move(rows), lines, "There is no place.");
}

int add(const Context& context, const std::string& name, const std::string& sort_word) {
  const auto sort = parse_word<PlaceSort>(sort_word);
  if (!sort) {
    throw WrongUse{
        fmt::format("--sort '{}' is none of: {}.", sort_word, allowed_words<PlaceSort>())};
  }
  const auto store = context.open(store::OpenMode::existing);
  const Place place{name, *sort, {}};
  const auto booked =
      desk::in_one_work(*store, context.author("a place was recorded"),
                        [&](store::UnitOfWork& work) { return desk::book_place(work, place); });
  if (!booked) throw WrongUse{booked.error().sentence};
  if (context.json) {
    print({{"place", place.name}, {"sort", word(place.sort)}});
  } else {
    std::cout << desk::place_words(place) << '\n';
  }
  return done;
}

}  // namespace

void add_place(Command& app, Context& context) {
  auto* command = app.add_subcommand("place", "The places where stock lies");
  command->require_subcommand();
  command->fallthrough();
  auto* listed = command->add_subcommand("list", "Every place and its sort");
  listed->callback([&context] { context.run = [&context] { return list(context); }; });
  struct Options {
    std::string name;
    std::string sort = "store";
  };
  auto* added = command->add_subcommand("add", "Record a place, or change the sort of one");
  const auto options = std::make_shared<Options>();
  added->add_option("name", options->name, "Its name")->required();
  added->add_option("--sort", options->sort,
                    "store (default), quarantine, in transit, on loan or at supplier");
  added->callback([&context, options] {
    context.run = [&context, options] { return add(context, options->name, options->sort); };
  });
}

}  // namespace sparewell::batch
