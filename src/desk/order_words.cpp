#include "desk/order_words.hpp"

#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/stored_order.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array<std::string_view, 6> stages{
    "draft", "waiting for approval", "placed", "partly received", "received", "cancelled"};

}  // namespace

std::string stage_words(supply::OrderStage stage) {
  return std::string{stages.at(static_cast<std::size_t>(stage))};
}

std::string stage_key(supply::OrderStage stage) {
  auto key = stage_words(stage);
  for (auto& c : key) {
    if (c == ' ') c = '_';
  }
  return key;
}

std::string worth_words(const supply::OrderWorth& worth) {
  if (worth.unpriced == 0) return amount_words(worth.known);
  const auto unpriced =
      say("{} without a known cost in {}", count_words(worth.unpriced, "piece", "pieces"),
          worth.known.currency.code);
  if (worth.known.minor == 0) return unpriced;
  return fmt::format("{} and {}", amount_words(worth.known), unpriced);
}

std::string worth_sentence(const supply::Order& order, const Money& limit) {
  const auto worth = supply::worth_of(order.lines, limit.currency);
  const bool above = worth.known.minor > limit.minor;
  return say("order {} comes to {}, {} {} above which a named person has to approve.", order.ref,
             worth_words(worth), above ? said("more than the") : said("which may be more than the"),
             amount_words(limit));
}

std::string waiting_sentence(const supply::Order& order, const Money& limit) {
  return say("{} It was not placed; have it approved first.",
             capitalised(worth_sentence(order, limit)));
}

OrderHeader approved_header(const store::Snapshot& snapshot, const supply::Order& order,
                            const std::string& approved_by, Date today) {
  const auto settings = snapshot.settings();
  const auto currency =
      settings.approval_above ? settings.approval_above->currency : settings.currency;
  const auto worth = supply::worth_of(order.lines, currency);
  OrderHeader made = header_of(order);
  made.approved_by = approved_by;
  made.approved_on = today;
  made.approved_sum = worth.known;
  made.approved_unpriced = worth.unpriced;
  return made;
}

std::string approved_sum_words(const OrderHeader& header) {
  if (!header.approved_sum) return said("no sum");
  return worth_words({*header.approved_sum, header.approved_unpriced});
}

}  // namespace sparewell::desk
