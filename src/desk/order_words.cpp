#include "desk/order_words.hpp"

#include <array>

#include "clinic/say.hpp"
#include "desk/stored_order.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr std::array stages{to_say("draft"),    to_say("waiting for approval"),
                            to_say("placed"),   to_say("partly received"),
                            to_say("received"), to_say("cancelled")};

}  // namespace

std::string stage_words(supply::OrderStage stage) {
  return said(stages.at(static_cast<std::size_t>(stage)));
}

std::string stage_key(supply::OrderStage stage) {
  std::string key = stages.at(static_cast<std::size_t>(stage));
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
  return list_words({amount_words(worth.known), unpriced});
}

std::string worth_sentence(const supply::Order& order, const Money& limit) {
  const auto worth = supply::worth_of(order.lines, limit.currency);
  const bool above = worth.known.minor > limit.minor;
  const auto words = worth_words(worth);
  const auto most = amount_words(limit);
  return above ? say("order {} comes to {}, more than the {} above which a named person has to "
                     "approve.",
                     order.ref, words, most)
               : say("order {} comes to {}, which may be more than the {} above which a named "
                     "person has to approve.",
                     order.ref, words, most);
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
