// Makes an invented clinic from a seed and writes it as a folder of CSV files.
#include <charconv>
#include <cstdio>
#include <exception>
#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

#include "branches.hpp"
#include "paperwork.hpp"
#include "planted.hpp"
#include "planted_reactions.hpp"
#include "terms.hpp"
#include "world.hpp"
#include "write_folder.hpp"

namespace {

using namespace sparewell;
using namespace sparewell::sample;

constexpr std::string_view help =
    "Usage: sparewell-sample-maker --out DIR [--seed N] [--patients N] [--years Y]\n"
    "                              [--socks N] [--places N] [--until DATE] [--planted FILE]\n"
    "Makes an invented clinic; the same options give the same bytes.\n"
    "  --seed N        which clinic (1)\n"
    "  --patients N    how many patients, 1 to 100000 (150)\n"
    "  --years Y       how much history, 0.5 to 20; more history is more parts for each (4)\n"
    "  --socks N       socks handed out to a patient at a time, 0 to 24 (6)\n"
    "  --places N      branches, 1 to 9 (1)\n"
    "  --until DATE    the last day that is written down (2026-11-24)\n"
    "  --out DIR       the folder for the fourteen files\n"
    "  --planted FILE  also list the disagreements that were put in on purpose\n";

struct Options {
  Wishes wishes;
  int places = 1;
  std::filesystem::path out;
  std::filesystem::path planted;
};

template <class Number>
Number number_between(std::string_view name, std::string_view text, Number least, Number most) {
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc{} || end != text.data() + text.size() || value < least || value > most) {
    throw std::invalid_argument{
        fmt::format("{} must be a number from {} to {}, not '{}'.", name, least, most, text)};
  }
  return value;
}

void take(Options& options, std::string_view name, std::string_view value) {
  Wishes& wishes = options.wishes;
  if (name == "--seed") {
    wishes.seed = number_between<std::uint64_t>(name, value, 0, UINT64_MAX);
  } else if (name == "--patients") {
    wishes.patients = number_between(name, value, 1, 100000);
  } else if (name == "--years") {
    wishes.years = number_between(name, value, 0.5, 20.0);
  } else if (name == "--socks") {
    wishes.socks = number_between(name, value, 0, 24);
  } else if (name == "--places") {
    options.places = number_between(name, value, 1, 9);
  } else if (name == "--until") {
    const auto day = parse_iso_date(value);
    if (!day) throw std::invalid_argument{fmt::format("'{}' is not a date.", value)};
    wishes.until = *day;
  } else if (name == "--out") {
    options.out = value;
  } else if (name == "--planted") {
    options.planted = value;
  } else {
    throw std::invalid_argument{fmt::format("The option {} is not known; see --help.", name)};
  }
}

Options read_options(const std::vector<std::string_view>& words) {
  Options options;
  for (std::size_t i = 0; i < words.size(); i += 2) {
    if (i + 1 == words.size()) {
      throw std::invalid_argument{fmt::format("{} needs a value; see --help.", words[i])};
    }
    take(options, words[i], words[i + 1]);
  }
  if (options.out.empty()) throw std::invalid_argument{"--out DIR is missing; see --help."};
  return options;
}

void make(const Options& options) {
  const Wishes& wishes = options.wishes;
  Clinic clinic = World{wishes}.run();
  agree_on_terms(clinic);
  write_claims(clinic, wishes.seed, wishes.until);
  write_invoices(clinic, wishes.seed, wishes.until);
  charge_freight(clinic);
  std::vector<Planted> planted = plant_disagreements(clinic, wishes.seed, wishes.until);
  for (auto& gap : plant_gaps(clinic, wishes.seed, wishes.until)) planted.push_back(std::move(gap));
  for (auto& one : plant_reactions(clinic, wishes.until)) planted.push_back(std::move(one));
  spread_over_branches(clinic, options.places);
  write_folder(clinic, options.out);
  if (!options.planted.empty()) write_planted(planted, options.planted);
  fmt::print("{} patients, {} units, {} order lines, {} claim lines in {}\n",
             clinic.patients.size(), clinic.units.size(), clinic.order_lines.size(),
             clinic.claim_lines.size(), options.out.string());
}

}  // namespace

int main(int count, char** arguments) {
  const std::vector<std::string_view> words(arguments + 1, arguments + count);
  if (words.size() == 1 && words.front() == "--help") {
    fmt::print("{}", help);
    return 0;
  }
  try {
    make(read_options(words));
    return 0;
  } catch (const std::invalid_argument& wrong) {
    fmt::print(stderr, "{}\n", wrong.what());
    return 2;
  } catch (const std::exception& failed) {
    fmt::print(stderr, "{}\n", failed.what());
    return 3;
  }
}
