/**
 * What links need not carry because both ends have it: the pieces that layouts are made of, the commonest last. It belongs to the
 * version digit of links and never changes under it: a link made with another one cannot be read.
 */
export const DICTIONARY_TEXT =
  '{"version":1,"job":{"name":"","car":"","customer":"","date":"20","revision":"A","preparedBy":"","notes":""},"datum":"",' +
  '"units":{"length":"mm","force":"N","mass":"kg"},"dustyOrMuddyUse":true,"ruleSetId":"workshop-practice","tubes":[],"places":[]}'
