#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"

namespace sparewell::batch {
namespace {

int run(const Context& context, const std::string& item_code, int day_count) {
  const auto assessment = context.forecast();
  const ItemCode item{item_code};
  if (ClinicIndex{assessment.clinic}.item(item) == nullptr) {
    throw WrongUse{fmt::format("The catalogue has no item '{}'; check the code.", item_code)};
  }
  const auto pmf =
      supply::demand(assessment.clinic, assessment.lives, item, assessment.today, day_count);
  if (context.json) {
    print(
        {{"item_code", item_code}, {"days", day_count}, {"mean", pmf.mean()}, {"pmf", pmf.mass()}});
    return done;
  }
  std::cout << fmt::format("{}: {:.2f} expected in {} days\n", item_code, pmf.mean(), day_count);
  for (std::size_t n = 0; n < pmf.mass().size(); ++n) {
    if (pmf.mass()[n] < 1e-6) continue;
    std::cout << fmt::format("{:>4} needed: {:8.4f} %\n", n, 100 * pmf.mass()[n]);
  }
  return done;
}

}  // namespace

void add_demand(CLI::App& app, Context& context) {
  auto* command =
      app.add_subcommand("demand", "How many pieces of an item will be needed, with chances");
  const auto item = std::make_shared<std::string>();
  const auto day_count = std::make_shared<int>();
  command->add_option("--item", *item, "The item's code")->required();
  command->add_option("--days", *day_count, "Days after today")
      ->required()
      ->check(CLI::Range(0, 3660));
  command->callback([&context, item, day_count] {
    context.run = [&context, item, day_count] { return run(context, *item, *day_count); };
  });
}

}  // namespace sparewell::batch
