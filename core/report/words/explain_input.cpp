// Of what a person wrote: the mistakes of a file or a word, by their kind.
#include "report/words/explanations.h"

namespace riserun::report {

std::span<const Explanation> input_explanations() {
  static constexpr Explanation kRows[] = {
      {"nothing_written", "A quantity stands there without anything in it.", "It would be guessed at.",
       "Write it with its unit, or leave the key out.", "the format of the file"},
      {"not_a_number", "What begins there is no number as it is read here.", "Digits of two readings are told apart.",
       "As 14-1/16, 3/4 or 0.75; one sign at most.", "the format of the file"},
      {"no_unit", "The number has no unit, and more than one could be meant.", "5 is not 5 in, 5 ft and 5 mm.",
       "Write the unit behind it, or 'units: inch' at the top of the file, '--units inch' on the command line.",
       "the format of the file"},
      {"wrong_unit", "The unit is none of that quantity, or is not known.", "A length is no pressure.",
       "One of the units that the message lists.", "the format of the file"},
      {"out_of_range", "The value lies outside what can be meant there.", "A slip of the point or of the unit.",
       "A value within the range that the message names.", "the range of each key, as 'riserun help' says it"},
      {"not_one_of", "The word is none of the few that the key takes.", "Each of them means one thing.",
       "One of the words that the message lists.", "the table of keys"},
      {"unknown_part", "No part of the catalog is called so.", "A part that is only like it is not taken for it.",
       "Words of its name, its size and its material, or its id; 'riserun catalog WORDS' finds it.", "the catalog"},
      {"ambiguous_part", "Several parts are called so.", "They differ in size, material or ends.",
       "One word more, or the id; the message lists them.", "the catalog"},
      {"unknown_port", "The words name no port, or more than one.", "Size, kind of thread and end decide what fits.",
       "As '1-1/4 FNPT' or '3/4 male garden hose'; 'riserun identify' names a thread by measuring it.",
       "the kinds of joint of the catalog"},
      {"wrong_value", "The value cannot be what stands there; the message says why.",
       "It does not agree with another one, or with what there is.", "What the message allows.",
       "the rules of each key, as 'riserun help' says them"},
      {"unknown_key", "The file has a key that nothing reads.", "A slip of a letter would be passed over in silence.",
       "The key that the message offers, or leave it out; 'riserun help job' lists all.", "the table of keys"},
      {"missing_key", "A key that is needed is not there.", "Nothing sensible can be assumed for it.", "Add it.",
       "the table of keys"},
      {"duplicate_key", "A key stands twice in one map.", "Only one of the two can hold.", "Take one of them out.",
       "YAML 1.2, 3.2.1.1"},
      {"empty_key", "A key has nothing behind it.", "It would be guessed at.", "Its value, or leave the key out.",
       "the format of the file"},
      {"wrong_shape", "A list, a map of keys or a text stands where another of the three is read.",
       "Often an indent or a '-' too many or too few.", "The shape that the message names.", "YAML 1.2"},
      {"not_yaml", "The file cannot be read as YAML, or as a table, from that place on.",
       "Mostly an indent, a quote or a bracket.", "What the message says of that place.", "YAML 1.2; RFC 4180"},
      {"not_text", "The file holds what no text file holds.", "It is another file, or was damaged.",
       "The right file, written as UTF-8.", "Unicode, UTF-8"},
      {"file_not_read", "The file is not there, is too large, or may not be read.",
       "Nothing is known of what it holds.", "Its name and place, and who may read it.", "the operating system"},
      {"file_not_written", "What was asked for could not be written, or would write over a file that is there.",
       "Nothing is left half written: what stood there stands there still.",
       "Another name or place, room on the disk, or '--force' to write over it.", "the operating system"},
      {"catalog_not_whole", "A file of the shipped catalog is missing or cut off.",
       "Parts are missing then, and answers change without a word.", "Put it back, or install the program again.",
       "the list of files that the program was built with"},
  };
  return kRows;
}

}  // namespace riserun::report
